// What people do, and the updates that come of it.
import { expect, it } from 'vitest';
import { given, kindsOf, kitchenGroup, refusedWith } from './given.ts';

it('opens the private chat by a deep link, with its code', async () => {
  const { service, bot } = await given();
  const guest = service.addUser({ first_name: 'Bo', username: 'bo_cuts' }).id;
  service.start(guest, 'INVITE');
  const message = (await bot.getUpdates()).at(-1)?.message;
  expect(message).toMatchObject({
    text: '/start INVITE',
    chat: { id: guest, type: 'private', first_name: 'Bo', username: 'bo_cuts' },
    from: { id: guest, is_bot: false },
    entities: [{ type: 'bot_command', offset: 0, length: 6 }],
  });
});

it('shows an edit as an edited_message of the same id', async () => {
  const { service, cook } = await given();
  const { message } = service.say({ from: cook, text: 'trim 1.1' });
  service.editOwn({ chat: cook, message_id: message.message_id, text: 'trim 1.3' });
  const edited = service.waitingUpdates().at(-1)?.edited_message;
  expect(edited).toMatchObject({ message_id: message.message_id, text: 'trim 1.3', date: message.date });
  expect(edited).toHaveProperty('edit_date');
});

it('presses a button, is answered once, and too late never', async () => {
  const { service, bot, cook } = await given();
  const reply_markup = { inline_keyboard: [[{ text: 'Undo', callback_data: 'u:1' }]] };
  const { message_id } = await bot.sendMessage(cook, 'card', { reply_markup });
  const press = service.press({ user: cook, chat: cook, message_id, text: 'Undo' });
  const query = service.waitingUpdates().at(-1)?.callback_query;
  expect(query).toMatchObject({
    id: press.callbackId,
    data: 'u:1',
    from: { id: cook },
    message: { message_id },
  });
  await bot.answerCallbackQuery(press.callbackId, { text: 'Taken back', show_alert: true });
  expect(service.pressAnswer(press.callbackId)).toEqual({ text: 'Taken back', alert: true });
  expect(await refusedWith(bot.answerCallbackQuery(press.callbackId))).toContain('query is too old');
  const late = service.press({ user: cook, chat: cook, message_id, data: 'u:1' });
  service.advance(601);
  expect(await refusedWith(bot.answerCallbackQuery(late.callbackId))).toContain('query is too old');
});

it('presses what is not there only where a test forges it', async () => {
  const { service, bot, cook } = await given();
  const { message_id } = await bot.sendMessage(cook, 'card');
  const press = { user: cook, chat: cook, message_id, data: 'u:1' };
  expect(() => service.press(press)).toThrow('no button');
  await bot.deleteMessage(cook, message_id);
  service.press({ ...press, forged: true });
  const query = service.waitingUpdates().at(-1)?.callback_query;
  expect(query).toMatchObject({ data: 'u:1', message: { date: 0, message_id } });
});

it('writes under other names: forwarded, anonymous, by a channel, through a bot', async () => {
  const all = await given();
  const { service, cook } = all;
  const chat = kitchenGroup(all);
  const own = service.say({ from: cook, text: 'trim 1.1' }).message;
  const forwardOf = { chat: cook, message_id: own.message_id };
  const text = 'trim 1.1';
  const places = [
    { forwardOf },
    { forwardOf: 'hidden user' },
    { as: 'anonymous admin' },
    { as: { channel: 'Meat news' } },
    { viaBot: 'gif' },
  ] as const;
  const [user, hidden, admin, channel, via] = places.map(
    (place) => service.say({ from: cook, chat, text, ...place }).message,
  );
  expect(user?.forward_origin).toMatchObject({ type: 'user', sender_user: { id: cook } });
  expect(hidden?.forward_origin).toMatchObject({ type: 'hidden_user' });
  expect(admin).toMatchObject({ from: { username: 'GroupAnonymousBot' }, sender_chat: { id: chat } });
  expect(channel).toMatchObject({ from: { username: 'Channel_Bot' }, sender_chat: { type: 'channel' } });
  expect(via).toMatchObject({ from: { id: cook }, via_bot: { username: 'gif' } });
});

it('lets nobody write where they are not', async () => {
  const all = await given();
  const chat = kitchenGroup(all);
  const { service, cook } = all;
  const stranger = service.addUser({ first_name: 'Bo' }).id;
  expect(() => service.say({ from: stranger, chat, text: 'x' })).toThrow('no member');
  service.block(cook);
  expect(() => service.say({ from: cook, text: 'x' })).toThrow('has blocked');
});

it('brings the bot into a group and throws it out', async () => {
  const all = await given();
  const { service, bot, cook } = all;
  const chat = kitchenGroup(all);
  expect(kindsOf(service.waitingUpdates()).slice(-2)).toEqual(['my_chat_member', 'message']);
  expect(service.waitingUpdates().at(-2)?.my_chat_member).toMatchObject({
    chat: { id: chat, type: 'group' },
    from: { id: cook },
    old_chat_member: { status: 'left' },
    new_chat_member: { status: 'member' },
  });
  service.removeBot({ chat, by: cook });
  expect(service.waitingUpdates().at(-1)?.my_chat_member?.new_chat_member.status).toBe('kicked');
  expect(await refusedWith(bot.sendMessage(chat, 'x'))).toBe(
    '403 Forbidden: bot was kicked from the group chat',
  );
  expect(service.say({ from: cook, chat, text: 'gone?' }).updateId).toBeUndefined();
});

it('leaves a group', async () => {
  const all = await given();
  const { service, bot, cook } = all;
  const chat = kitchenGroup(all);
  await bot.leaveChat(chat);
  expect(service.waitingUpdates().at(-1)?.my_chat_member?.new_chat_member.status).toBe('left');
  expect(await refusedWith(bot.sendMessage(chat, 'x'))).toContain('403 Forbidden: bot is not a member');
  expect(await refusedWith(bot.leaveChat(cook))).toContain("can't be changed in private chats");
});

it('knows who is in a group', async () => {
  const all = await given();
  const { service, bot, cook } = all;
  const chat = kitchenGroup(all);
  const cutter = service.addUser({ first_name: 'Bo' }).id;
  const statusOf = async (user: number) => (await bot.getChatMember(chat, user)).status;
  expect([await statusOf(cook), await statusOf(cutter)]).toEqual(['creator', 'left']);
  service.addMember({ chat, user: cutter, by: cook });
  expect(await statusOf(cutter)).toBe('member');
  service.removeMember({ chat, user: cutter });
  expect(service.waitingUpdates().at(-1)?.message?.left_chat_member?.id).toBe(cutter);
  expect(await bot.getChat(chat)).toMatchObject({ id: chat, title: 'Kitchen', type: 'group' });
});

it('tells an administrator who asked of the members that come and go', async () => {
  const all = await given();
  const { service, bot, cook } = all;
  const chat = kitchenGroup(all);
  service.setBotStanding({ chat, by: cook, as: 'administrator' });
  await bot.getUpdates({ allowed_updates: ['chat_member'] });
  const cutter = service.addUser({ first_name: 'Bo' }).id;
  service.addMember({ chat, user: cutter, by: cook });
  expect(service.waitingUpdates().at(-1)?.chat_member).toMatchObject({
    old_chat_member: { status: 'left' },
    new_chat_member: { status: 'member', user: { id: cutter } },
  });
});

it('moves a group to a supergroup with message ids of its own', async () => {
  const all = await given();
  const { service, bot, cook } = all;
  const chat = kitchenGroup(all);
  const card = await bot.sendMessage(chat, 'card');
  const { id } = service.migrate({ chat, by: cook });
  expect(String(id)).toMatch(/^-100\d{10}$/);
  const [to, from] = service.waitingUpdates().slice(-2);
  expect(to?.message).toMatchObject({ chat: { id: chat }, migrate_to_chat_id: id });
  expect(from?.message).toMatchObject({ chat: { id }, migrate_from_chat_id: chat, message_id: 1 });
  await expect(bot.editMessageText(chat, card.message_id, 'x')).rejects.toMatchObject({
    error_code: 400,
    parameters: { migrate_to_chat_id: id },
  });
  expect(await refusedWith(bot.editMessageText(id, card.message_id, 'x'))).toContain('not found');
  expect((await bot.sendMessage(id, 'card again')).message_id).toBe(2);
});

// Messages of the bot, called as the bot calls: sent, edited, deleted, reacted to, and what is refused.
import { expect, it } from 'vitest';
import { clientOf, given, kitchenGroup, refusedWith } from './given.ts';

const buttons = (...data: readonly string[]) => ({
  reply_markup: { inline_keyboard: [data.map((one) => ({ text: one || 'none', callback_data: one }))] },
});

it('says who the bot is', async () => {
  const { bot } = await given();
  expect(await bot.getMe()).toMatchObject({ id: 7_000_000_001, is_bot: true, username: 'blockhand_bot' });
});

it('refuses a wrong token, one of no shape, and an unknown method', async () => {
  const { service } = await given();
  expect(await refusedWith(clientOf(service, '1:wrong').getMe())).toBe('401 Unauthorized');
  expect(await refusedWith(clientOf(service, 'wrong').getMe())).toBe('404 Not Found');
  expect(await refusedWith(clientOf(service).sendDice(1, '🎲'))).toBe('404 Not Found: method not found');
});

it('sends a message that the person then sees', async () => {
  const { service, bot, cook } = await given();
  const sent = await bot.sendMessage(cook, 'trim 1.1 lb', { ...buttons('undo'), disable_notification: true });
  expect(sent).toMatchObject({ chat: { id: cook, type: 'private' }, from: { is_bot: true } });
  expect(service.seenFromBot(cook)).toMatchObject([
    {
      message_id: sent.message_id,
      text: 'trim 1.1 lb',
      buttons: [[{ text: 'undo', data: 'undo' }]],
      silent: true,
      isEdited: false,
    },
  ]);
});

it('quotes what a message replies to, without the reply in it', async () => {
  const { service, bot, cook } = await given();
  const first = await bot.sendMessage(cook, 'one');
  const second = service.say({ from: cook, text: 'two', replyTo: first.message_id });
  const { message_id } = second.message;
  const third = await bot.sendMessage(cook, 'three', { reply_parameters: { message_id } });
  expect(third.reply_to_message).toMatchObject({ message_id, text: 'two' });
  expect(third.reply_to_message).not.toHaveProperty('reply_to_message');
});

it('sends without the reply only where that is allowed', async () => {
  const { bot, cook } = await given();
  const missing = { message_id: 999 };
  expect(await refusedWith(bot.sendMessage(cook, 'one', { reply_parameters: missing }))).toContain(
    '400 Bad Request: message to be replied not found',
  );
  const reply_parameters = { ...missing, allow_sending_without_reply: true };
  expect(await refusedWith(bot.sendMessage(cook, 'one', { reply_parameters }))).toBe('done');
});

it.each([
  ['', '400 Bad Request: message text is empty'],
  [' \n ', '400 Bad Request: message text is empty'],
  ['x'.repeat(4096), 'done'],
  ['x'.repeat(4097), '400 Bad Request: message is too long'],
  ['🥩'.repeat(2048), 'done'],
  ['🥩'.repeat(2049), '400 Bad Request: message is too long'],
  ['half a pair \ud83e', '400 Bad Request: strings must be encoded in UTF-8'],
])('counts a text in UTF-16 units (%#)', async (text, answer) => {
  const { bot, cook } = await given();
  expect(await refusedWith(bot.sendMessage(cook, text))).toBe(answer);
});

it('counts a text after its formatting is read', async () => {
  const { bot, cook } = await given();
  const text = `<b>${'&lt;'.repeat(4096)}</b>`;
  const sent = await bot.sendMessage(cook, text, { parse_mode: 'HTML' });
  expect(sent.text).toBe('<'.repeat(4096));
});

it.each([
  ['x'.repeat(64), 'done'],
  ['x'.repeat(65), '400 Bad Request: BUTTON_DATA_INVALID'],
  ['ä'.repeat(33), '400 Bad Request: BUTTON_DATA_INVALID'],
  ['', '400 Bad Request: BUTTON_DATA_INVALID'],
])('counts the data of a button in bytes (%#)', async (data, answer) => {
  const { bot, cook } = await given();
  expect(await refusedWith(bot.sendMessage(cook, 'sure?', buttons(data)))).toBe(answer);
});

it('refuses a keyboard of more than 100 buttons', async () => {
  const { bot, cook } = await given();
  const data = Array.from({ length: 101 }, (_, index) => String(index));
  expect(await refusedWith(bot.sendMessage(cook, 'which?', buttons(...data)))).toContain('too long');
});

it('edits in place; without a keyboard in the call the keyboard goes', async () => {
  const { service, bot, cook } = await given();
  const { message_id } = await bot.sendMessage(cook, 'card 1', buttons('undo'));
  await bot.editMessageText(cook, message_id, 'card 2');
  expect(service.seenFromBot(cook)).toMatchObject([{ text: 'card 2', buttons: [], isEdited: true }]);
});

it('refuses an edit that changes nothing', async () => {
  const { bot, cook } = await given();
  const { message_id } = await bot.sendMessage(cook, 'card', buttons('undo'));
  const same = bot.editMessageText(cook, message_id, ' card', buttons('undo'));
  expect(await refusedWith(same)).toContain('400 Bad Request: message is not modified');
  const keyboard = bot.editMessageReplyMarkup(cook, message_id, buttons('undo'));
  expect(await refusedWith(keyboard)).toContain('message is not modified');
  expect(await refusedWith(bot.editMessageReplyMarkup(cook, message_id))).toBe('done');
});

it("refuses to edit what is not there, and a person's message", async () => {
  const { service, bot, cook } = await given();
  const { message_id } = service.say({ from: cook, text: 'trim 1.1' }).message;
  expect(await refusedWith(bot.editMessageText(cook, 999, 'x'))).toContain('message to edit not found');
  expect(await refusedWith(bot.editMessageText(cook, message_id, 'x'))).toContain("message can't be edited");
});

it('deletes once, and in a group only its own', async () => {
  const all = await given();
  const { service, bot, cook } = all;
  const group = kitchenGroup(all);
  const { message_id } = await bot.sendMessage(group, 'card');
  await bot.deleteMessage(group, message_id);
  expect(service.seenFromBot(group)).toEqual([]);
  expect(await refusedWith(bot.deleteMessage(group, message_id))).toContain('message to delete not found');
  const theirs = service.say({ from: cook, chat: group, text: 'hi' }).message.message_id;
  expect(await refusedWith(bot.deleteMessage(group, theirs))).toContain("message can't be deleted");
});

it('sets one of the allowed reactions, and takes it away', async () => {
  const { service, bot, cook } = await given();
  const { message_id } = service.say({ from: cook, text: 'trim 1.1' }).message;
  const reaction = (): unknown => service.seen(cook).at(-1)?.reaction;
  await bot.setMessageReaction(cook, message_id, [{ type: 'emoji', emoji: '✍' }]);
  expect(reaction()).toBe('✍');
  await bot.setMessageReaction(cook, message_id, []);
  expect(reaction()).toBeUndefined();
});

it.each([
  [['✅'], 'REACTION_INVALID'],
  [['❌'], 'REACTION_INVALID'],
  [['👍', '👀'], 'REACTIONS_TOO_MANY'],
])('refuses the reaction %j', async (emoji, why) => {
  const { service, bot, cook } = await given();
  const { message_id } = service.say({ from: cook, text: 'trim 1.1' }).message;
  const reaction = emoji.map((one) => ({ type: 'emoji' as const, emoji: one as '👍' }));
  expect(await refusedWith(bot.setMessageReaction(cook, message_id, reaction))).toBe(
    `400 Bad Request: ${why}`,
  );
  expect(await refusedWith(bot.setMessageReaction(cook, 999, []))).toContain('message to react not found');
});

it('refuses to write where nobody lets it', async () => {
  const { service, bot, cook } = await given();
  const stranger = service.addUser({ first_name: 'Bo' }).id;
  expect(await refusedWith(bot.sendMessage(4242, 'x'))).toBe('400 Bad Request: chat not found');
  expect(await refusedWith(bot.sendMessage(stranger, 'x'))).toContain("403 Forbidden: bot can't initiate");
  service.block(cook);
  expect(await refusedWith(bot.sendMessage(cook, 'x'))).toBe('403 Forbidden: bot was blocked by the user');
  service.unblock(cook);
  expect(await refusedWith(bot.sendMessage(cook, 'x'))).toBe('done');
  service.deactivate(cook);
  expect(await refusedWith(bot.sendMessage(cook, 'x'))).toBe('403 Forbidden: user is deactivated');
});

it('keeps the commands by scope', async () => {
  const { bot } = await given();
  const commands = [{ command: 'help', description: 'How it works' }];
  await bot.setMyCommands(commands, { scope: { type: 'all_private_chats' } });
  expect(await bot.getMyCommands({ scope: { type: 'all_private_chats' } })).toEqual(commands);
  expect(await bot.getMyCommands()).toEqual([]);
  const bad = bot.setMyCommands([{ command: 'Help', description: 'x' }]);
  expect(await refusedWith(bad)).toContain('BOT_COMMAND_INVALID');
});

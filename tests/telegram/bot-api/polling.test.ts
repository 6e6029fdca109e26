// Updates by long polling: offsets, limits, waiting, conflicts, and odd numbering.
import { expect, it } from 'vitest';
import { given, idsOf, kindsOf, kitchenGroup, refusedWith } from './given.ts';

it('gives the same updates until an offset confirms them', async () => {
  const { service, bot, cook } = await given();
  service.say({ from: cook, text: 'two' });
  const [first = 0, second = 0] = idsOf(await bot.getUpdates());
  expect(second).toBe(first + 1);
  expect(idsOf(await bot.getUpdates())).toEqual([first, second]);
  expect(idsOf(await bot.getUpdates({ offset: second }))).toEqual([second]);
  expect(idsOf(await bot.getUpdates({ offset: second + 1 }))).toEqual([]);
  expect(service.waitingUpdates()).toEqual([]);
});

it('gives no more than asked, and the last ones for a negative offset', async () => {
  const { service, bot, cook } = await given();
  for (const text of ['2', '3', '4']) service.say({ from: cook, text });
  expect(await bot.getUpdates({ limit: 2 })).toHaveLength(2);
  expect(await refusedWith(bot.getUpdates({ limit: 0 }))).toContain('400');
  const [last] = await bot.getUpdates({ offset: -1 });
  expect(last?.message?.text).toBe('4');
  expect(service.waitingUpdates()).toHaveLength(1);
});

it('waits for an update that is not there yet', async () => {
  const { service, bot, cook } = await given();
  const [start = 0] = idsOf(await bot.getUpdates());
  const poll = bot.getUpdates({ offset: start + 1, timeout: 50 });
  await expect.poll(() => service.calls({ method: 'getUpdates' }).length).toBe(2);
  service.say({ from: cook, text: 'trim 1.1' });
  expect((await poll).map(({ message }) => message?.text)).toEqual(['trim 1.1']);
});

it('answers with nothing when the time is up', async () => {
  const { bot } = await given();
  const [start = 0] = idsOf(await bot.getUpdates());
  expect(await bot.getUpdates({ offset: start + 1, timeout: 1 })).toEqual([]);
});

it('ends the older of two polls with 409', async () => {
  const { service, bot, cook } = await given();
  const [start = 0] = idsOf(await bot.getUpdates());
  const older = refusedWith(bot.getUpdates({ offset: start + 1, timeout: 50 }));
  await expect.poll(() => service.calls({ method: 'getUpdates' }).length).toBe(2);
  const newer = bot.getUpdates({ offset: start + 1, timeout: 50 });
  expect(await older).toContain('409 Conflict: terminated by other getUpdates request');
  service.say({ from: cook, text: 'trim 1.1' });
  expect(await newer).toHaveLength(1);
});

it('forgets a poll whose caller is gone, and keeps its updates', async () => {
  const { service, bot, cook } = await given();
  const [start = 0] = idsOf(await bot.getUpdates());
  const caller = new AbortController();
  const poll = bot.getUpdates({ offset: start + 1, timeout: 50 }, caller.signal as never);
  await expect.poll(() => service.calls({ method: 'getUpdates' }).length).toBe(2);
  caller.abort();
  await poll.catch(() => undefined);
  await service.awaitCalls({ method: 'getUpdates' }, 2);
  expect(service.calls({ method: 'getUpdates' })[1]?.answer.kind).toBe('gone');
  service.say({ from: cook, text: 'trim 1.1' });
  expect(await bot.getUpdates({ offset: start + 1 })).toHaveLength(1);
});

it('makes only the kinds that were asked for', async () => {
  const all = await given();
  const { service, bot, cook } = all;
  await bot.getUpdates({ allowed_updates: ['edited_message'] });
  const { message, updateId } = service.say({ from: cook, text: 'trim 1.1' });
  expect(updateId).toBeUndefined();
  service.editOwn({ chat: cook, message_id: message.message_id, text: 'trim 1.2' });
  expect(kindsOf(await bot.getUpdates())).toEqual(['message', 'edited_message']);
});

it('repeats an update under its own id, though it was confirmed', async () => {
  const { service, bot } = await given();
  const [id = 0] = idsOf(await bot.getUpdates());
  await bot.getUpdates({ offset: id + 1 });
  service.repeatUpdate(id);
  expect(idsOf(await bot.getUpdates({ offset: id + 1 }))).toEqual([id]);
  expect(idsOf(await bot.getUpdates({ offset: id + 1 }))).toEqual([]);
});

it('repeats an update under a new id', async () => {
  const { service, bot } = await given();
  const [id = 0] = idsOf(await bot.getUpdates());
  service.repeatUpdateUnderNewId(id);
  const [one, other] = await bot.getUpdates();
  expect(other).toEqual({ ...one, update_id: id + 1 });
});

it('jumps, and turns the order around', async () => {
  const { service, bot, cook } = await given();
  const [id = 0] = idsOf(await bot.getUpdates());
  service.jumpUpdateIds(1000);
  service.say({ from: cook, text: 'later' });
  service.reverseWaiting();
  expect(idsOf(await bot.getUpdates())).toEqual([id + 1001, id]);
});

it('starts lower after a quiet week: an old offset confirms nothing of the new numbers', async () => {
  const { service, bot, cook } = await given();
  const [id = 0] = idsOf(await bot.getUpdates());
  service.restartUpdateIds(77);
  service.say({ from: cook, text: 'after the holidays' });
  expect(idsOf(await bot.getUpdates({ offset: id + 1 }))).toEqual([77]);
  expect(idsOf(await bot.getUpdates({ offset: 78 }))).toEqual([]);
});

it('tells a test when all is confirmed', async () => {
  const { service, bot } = await given();
  const confirmed = service.awaitConfirmed();
  const [id = 0] = idsOf(await bot.getUpdates());
  await bot.getUpdates({ offset: id + 1 });
  await confirmed;
});

it('shows a bot in privacy mode only what is for it', async () => {
  const all = await given({ readsAllGroupMessages: false });
  const { service, bot, cook } = all;
  const chat = kitchenGroup(all);
  const card = await bot.sendMessage(chat, 'card');
  const seen = (text: string, replyTo?: number): boolean =>
    service.say({ from: cook, chat, text, ...(replyTo === undefined ? {} : { replyTo }) }).updateId !==
    undefined;
  expect(seen('did you see the game')).toBe(false);
  expect(seen('/help@another_bot')).toBe(false);
  expect(seen('/help@blockhand_bot')).toBe(true);
  expect(seen('trim 1.1', card.message_id)).toBe(true);
});

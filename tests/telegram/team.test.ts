// Who may talk to the kitchen, and what they get to see.
import { expect, it, onTestFinished } from 'vitest';
import { type BotApi, startBotApi } from './bot-api/start.ts';
import { recordedTexts, newPath, runBot, type Running } from './running.ts';

async function service(): Promise<BotApi> {
  const api = await startBotApi();
  onTestFinished(() => api.close());
  return api;
}

/** What the bot wrote in a chat, when it has written that many. */
async function replies(api: BotApi, chat: number, count: number): Promise<readonly string[]> {
  await api.awaitCalls({ method: 'sendMessage', chat }, count);
  return api.seenFromBot(chat).map(({ text }) => text);
}

async function ask(api: BotApi, from: number, text: string): Promise<string> {
  const before = api.seenFromBot(from).length;
  api.say({ from, text });
  return (await replies(api, from, before + 1)).at(-1) ?? '';
}

const codeIn = (text: string): string => /start=([\w-]+)/.exec(text)?.[1] ?? '';

async function withTeam(): Promise<{
  api: BotApi;
  bot: Running;
  owner: number;
  cutter: number;
  path: string;
}> {
  const api = await service();
  const path = newPath();
  const [owner, cutter] = [api.addUser({ first_name: 'Ines' }).id, api.addUser({ first_name: 'Tobin' }).id];
  const bot = await runBot({ service: api, owner, path });
  const code = codeIn(await ask(api, owner, 'invite a cutter'));
  expect(await ask(api, cutter, `/start ${code}`)).toContain('Tobin');
  return { api, bot, owner, cutter, path };
}

it('is claimed once, by the code that the start gave', async () => {
  const api = await service();
  const [first, second] = [api.addUser({ first_name: 'Ines' }).id, api.addUser({ first_name: 'Mallory' }).id];
  const { claims, store } = await runBot({ service: api });
  expect(claims).toHaveLength(1);
  expect(await ask(api, second, '/start AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA')).toContain('invite');
  expect(await ask(api, first, `/start ${claims[0] ?? ''}`)).toContain('You own this kitchen');
  api.say({ from: second, text: `/start ${claims[0] ?? ''}` });
  await api.awaitConfirmed();
  expect(await store.members('kitchen')).toEqual([{ person: first, name: 'Ines', role: 'owner' }]);
});

it('records an entry, puts it right, and takes it back, in private', async () => {
  const { api, owner, path } = await withTeam();
  expect(await ask(api, owner, 'ribeye 14.2 lb at 7.40')).toBe('ribeye 14.2 lb, $7.40/lb, $105.08 in all');
  expect(await ask(api, owner, 'trim 1.1')).toBe('trim 1.1 lb, 7.7 %, 13.1 lb to go');
  expect(await ask(api, owner, 'no, 1.3')).toBe('trim 1.3 lb, 9.2 %, 12.9 lb to go');
  expect(await ask(api, owner, '/undo')).toContain('Took back');
  expect(recordedTexts(path)).toEqual(['ribeye 14.2 lb at 7.40', 'trim 1.1', 'no, 1.3', '/undo'].map((text) => text.replace('/', ''))); // prettier-ignore
  expect(api.seenFromBot(owner).every(({ silent }) => silent)).toBe(true);
});

it('lets a cutter never see a price', async () => {
  const { api, owner, cutter } = await withTeam();
  await ask(api, owner, 'ribeye 14.2 lb at 7.40');
  await ask(api, owner, 'ready cut 9.85');
  for (const text of [
    'trim 1.1',
    'trim is worth 1.50',
    '12 portions 16 oz',
    'portions weigh 11.2',
    'took 25 minutes at 18 an hour',
    "what's ribeye at",
    'cut or buy ribeye',
    'menu price at 32 percent',
    'where are we',
    'done',
    'done',
    'ribeye history',
    'striploin 12 lb at 8.10',
  ])
    // prettier-ignore
    await ask(api, cutter, text);
  const seen = api.seenFromBot(cutter).map(({ text }) => text);
  expect(seen.filter((text) => /[$]|7\.40|9\.85|1\.50|8\.10/.test(text))).toEqual([]);
  expect(await ask(api, owner, "what's ribeye at")).toContain('$');
});

it('lets a cutter invite nobody, and an invite serve once', async () => {
  const { api, bot, owner, cutter } = await withTeam();
  expect(await ask(api, cutter, 'invite a cutter')).toContain('not yours');
  const code = codeIn(await ask(api, owner, 'invite a lead'));
  const [lead, late] = [api.addUser({ first_name: 'Tobin' }).id, api.addUser({ first_name: 'Late' }).id];
  expect(await ask(api, lead, `/start ${code}`)).toContain('Tobin 2');
  expect(await ask(api, late, `/start ${code}`)).toContain('invite');
  expect(await ask(api, lead, 'invite an owner')).toContain('not yours');
  expect((await bot.store.members('kitchen')).map(({ role }) => role).sort()).toEqual([
    'cutter',
    'lead',
    'owner',
  ]);
});

it('refuses an invite that has expired', async () => {
  const { api, bot } = await withTeam();
  expect(await bot.store.invite('kitchen', 'unknown', new Date().toISOString())).toBeUndefined();
  const invite = { hash: 'h', role: 'lead', expiresAt: '2026-01-02T00:00:00.000Z' } as const;
  await bot.store.replaceClaim('kitchen', invite);
  expect(await bot.store.invite('kitchen', 'h', '2026-01-01T23:59:59.000Z')).toEqual(invite);
  expect(await bot.store.invite('kitchen', 'h', '2026-01-02T00:00:00.000Z')).toBeUndefined();
  expect(api.countEffects({ method: 'leaveChat' })).toBe(0);
});

it('knows a removed member no more', async () => {
  const { api, owner, cutter, path } = await withTeam();
  await ask(api, owner, 'ribeye 14.2 lb');
  expect(await ask(api, owner, 'remove Tobin')).toContain('Tobin');
  expect(await ask(api, cutter, 'trim 1.1')).toContain('invite');
  expect(recordedTexts(path)).toEqual(['ribeye 14.2 lb']);
  expect(await ask(api, owner, 'remove Ines')).not.toContain('no longer');
});

it('gives strangers one line, and keeps a count alone', async () => {
  const { api, bot, path } = await withTeam();
  const stranger = api.addUser({ first_name: 'Nosy' }).id;
  for (const text of ['hello', 'ribeye 14.2 lb at 7.40', "what's ribeye at"])
    api.say({ from: stranger, text });
  await replies(api, stranger, 1);
  await api.awaitConfirmed();
  await expect.poll(() => bot.store.backlog('7000000001')).toEqual({ strangers: 3 });
  expect(api.seenFromBot(stranger)).toHaveLength(1);
  expect(recordedTexts(path)).toEqual([]);
});

it.each([
  ['forwarded', { forwardOf: 'hidden user' }, 'forwarded'],
  ['sent through a bot', { viaBot: 'other_bot' }, 'forwarded'],
] as const)('takes what was %s for no entry', async (_, how, said) => {
  const { api, owner, path } = await withTeam();
  const before = api.seenFromBot(owner).length;
  api.say({ from: owner, text: 'ribeye 14.2 lb at 7.40', ...how });
  expect((await replies(api, owner, before + 1)).at(-1)).toContain(said);
  expect(recordedTexts(path)).toEqual([]);
});

it('says of an edit that it was not read, and changes nothing', async () => {
  const { api, owner, path } = await withTeam();
  await ask(api, owner, 'ribeye 14.2 lb');
  const { message } = api.say({ from: owner, text: 'trim 1.1' });
  await replies(api, owner, 3);
  api.editOwn({ chat: owner, message_id: message.message_id, text: 'trim 1.3' });
  expect((await replies(api, owner, 4)).at(-1)).toContain('edits');
  expect(recordedTexts(path)).toEqual(['ribeye 14.2 lb', 'trim 1.1']);
});

it('refuses what is too long, whole', async () => {
  const { api, owner, path } = await withTeam();
  expect(await ask(api, owner, 'ribeye 14.2 lb. '.repeat(70))).toContain('too long');
  expect(recordedTexts(path)).toEqual([]);
});

it('leaves out what floods it, and says so once', async () => {
  const { api, bot, cutter } = await withTeam();
  for (let count = 0; count < 100; count += 1) api.say({ from: cutter, text: 'where are we' });
  await api.awaitConfirmed();
  await expect.poll(() => bot.store.backlog('7000000001'), { timeout: 10_000 }).toEqual({ strangers: 0 });
  const seen = api.seenFromBot(cutter).map(({ text }) => text);
  expect(seen.filter((text) => text.includes('Too many'))).toHaveLength(1);
  expect(seen.length).toBeLessThan(75);
});

// Who may talk to the kitchen, and what they get to see.
import { expect, it } from 'vitest';
import { recordedTexts, runBot } from './running.ts';
import { ask, codeIn, quiet, service, shownBy, withTeam } from './talk.ts';

it('is claimed once, by the code that the start gave', async () => {
  const api = await service();
  const [first, second] = [api.addUser({ first_name: 'Ines' }).id, api.addUser({ first_name: 'Mallory' }).id];
  const bot = await runBot({ service: api });
  const { claims, store } = bot;
  const talk = { api, bot };
  expect(claims).toHaveLength(1);
  expect(await ask(talk, second, '/start AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA')).toContain('invite');
  expect(await ask(talk, first, `/start ${claims[0] ?? ''}`)).toContain('You own this kitchen');
  api.say({ from: second, text: `/start ${claims[0] ?? ''}` });
  await api.awaitConfirmed();
  expect(await store.members('kitchen')).toEqual([{ person: first, name: 'Ines', role: 'owner' }]);
});

it('records an entry, puts it right, and takes it back, in private', async () => {
  const talk = await withTeam();
  const { api, owner, path } = talk;
  expect(await ask(talk, owner, 'ribeye 14.2 lb at 7.40')).toBe('ribeye 14.2 lb, $7.40/lb, $105.08 in all');
  expect(await ask(talk, owner, 'trim 1.1')).toBe('trim 1.1 lb, 7.7 %, 13.1 lb to go');
  expect(await ask(talk, owner, 'no, 1.3')).toBe('trim 1.3 lb, 9.2 %, 12.9 lb to go');
  expect(await ask(talk, owner, '/undo')).toContain('Took back');
  expect(recordedTexts(path)).toEqual(['ribeye 14.2 lb at 7.40', 'trim 1.1', 'no, 1.3', '/undo'].map((text) => text.replace('/', ''))); // prettier-ignore
  expect(api.seenFromBot(owner).every(({ silent }) => silent)).toBe(true);
});

it('lets a cutter never see a price', async () => {
  const talk = await withTeam();
  const { api, owner, cutter } = talk;
  await ask(talk, owner, 'ribeye 14.2 lb at 7.40');
  await ask(talk, owner, 'ready cut 9.85');
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
    await ask(talk, cutter, text);
  const seen = api.seenFromBot(cutter).map(({ text }) => text);
  expect(seen.filter((text) => /[$]|7\.40|9\.85|1\.50|8\.10/.test(text))).toEqual([]);
  expect(await ask(talk, owner, "what's ribeye at")).toContain('$');
});

it('lets a cutter invite nobody, and an invite serve once', async () => {
  const talk = await withTeam();
  const { api, bot, owner, cutter } = talk;
  expect(await ask(talk, cutter, 'invite a cutter')).toContain('not yours');
  const code = codeIn(await ask(talk, owner, 'invite a lead'));
  const [lead, late] = [api.addUser({ first_name: 'Tobin' }).id, api.addUser({ first_name: 'Late' }).id];
  expect(await ask(talk, lead, `/start ${code}`)).toContain('Tobin 2');
  expect(await ask(talk, late, `/start ${code}`)).toContain('invite');
  expect(await ask(talk, lead, 'invite an owner')).toContain('not yours');
  expect((await bot.store.members('kitchen')).map(({ role }) => role).sort()).toEqual([
    'cutter',
    'lead',
    'owner',
  ]);
});

it('refuses an invite that has expired', async () => {
  const talk = await withTeam();
  const { api, bot } = talk;
  expect(await bot.store.invite('unknown', new Date().toISOString())).toBeUndefined();
  const invite = { hash: 'h', role: 'lead', expiresAt: '2026-01-02T00:00:00.000Z' } as const;
  await bot.store.replaceClaim('kitchen', invite);
  expect(await bot.store.invite('h', '2026-01-01T23:59:59.000Z')).toMatchObject(invite);
  expect(await bot.store.invite('h', '2026-01-02T00:00:00.000Z')).toBeUndefined();
  expect(api.countEffects({ method: 'leaveChat' })).toBe(0);
});

it('knows a removed member no more', async () => {
  const talk = await withTeam();
  const { owner, cutter, path } = talk;
  await ask(talk, owner, 'ribeye 14.2 lb');
  expect(await ask(talk, owner, 'remove Tobin')).toContain('Tobin');
  expect(await ask(talk, cutter, 'trim 1.1')).toContain('invite');
  expect(recordedTexts(path)).toEqual(['ribeye 14.2 lb']);
  expect(await ask(talk, owner, 'remove Ines')).not.toContain('no longer');
});

it('gives strangers one line, and keeps a count alone', async () => {
  const talk = await withTeam();
  const { api, bot, path } = talk;
  const stranger = api.addUser({ first_name: 'Nosy' }).id;
  for (const text of ['hello', 'ribeye 14.2 lb at 7.40', "what's ribeye at"])
    api.say({ from: stranger, text });
  await quiet(talk);
  expect(await bot.store.backlog('7000000001')).toEqual({ strangers: 3 });
  expect(api.seenFromBot(stranger)).toHaveLength(1);
  expect(recordedTexts(path)).toEqual([]);
});

it.each([
  ['forwarded', { forwardOf: 'hidden user' }, 'forwarded'],
  ['sent through a bot', { viaBot: 'other_bot' }, 'forwarded'],
] as const)('takes what was %s for no entry', async (_, how, said) => {
  const talk = await withTeam();
  const { api, owner, path } = talk;
  const [told] = await shownBy(talk, owner, () =>
    api.say({ from: owner, text: 'ribeye 14.2 lb at 7.40', ...how }),
  );
  expect(told?.text).toContain(said);
  expect(recordedTexts(path)).toEqual([]);
});

it('refuses what is too long, whole', async () => {
  const talk = await withTeam();
  const { owner, path } = talk;
  expect(await ask(talk, owner, 'ribeye 14.2 lb. '.repeat(70))).toContain('too long');
  expect(recordedTexts(path)).toEqual([]);
});

it('leaves out what floods it, and says so once', async () => {
  const talk = await withTeam();
  const { api, cutter } = talk;
  for (let count = 0; count < 100; count += 1) api.say({ from: cutter, text: 'where are we' });
  await quiet(talk);
  const seen = api.seenFromBot(cutter).map(({ text }) => text);
  expect(seen.filter((text) => text.includes('Too many'))).toHaveLength(1);
  expect(seen.length).toBeLessThan(75);
});

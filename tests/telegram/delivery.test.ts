// What a service may do to a bot: nothing is lost, nothing is counted twice, no message is sent twice.
import { expect, it, onTestFinished } from 'vitest';
import type { Delivery } from '../../src/app/ports/mailbox.ts';
import { StoreError, type Turn } from '../../src/app/ports/store.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import type { FaultAnswer } from './bot-api/faults/faults.ts';
import { type BotApi, startBotApi } from './bot-api/start.ts';
import { newPath, QUICK, recordedTexts, runBot, type Running } from './running.ts';

interface Stage {
  readonly api: BotApi;
  readonly bot: Running;
  readonly owner: number;
  readonly path: string;
}

async function stage(pace = QUICK): Promise<Stage> {
  const api = await startBotApi();
  onTestFinished(() => api.close());
  const owner = api.addUser({ first_name: 'Ines' }).id;
  const path = newPath();
  return { api, owner, path, bot: await runBot({ service: api, owner, path, pace }) };
}

const texts = (api: BotApi, chat: number): readonly string[] => api.seenFromBot(chat).map(({ text }) => text);
const idle = ({ api, bot }: Stage): Promise<void> =>
  api.awaitConfirmed().then(() =>
    expect
      .poll(() => bot.store.backlog('7000000001').then(({ strangers: _, ...rest }) => rest), {
        timeout: 240_000,
      })
      .toEqual({}),
  );

/** A repeat with a notice before it would be a repeat too. */
const repeated = (api: BotApi): readonly string[] => {
  const bodies = api
    .effects({ method: 'sendMessage' })
    .map(({ parameters }) => String(parameters['text']).replace(/^\(.*\)\n/, ''));
  return bodies.filter((body, index) => bodies.indexOf(body) !== index);
};

const entries = (count: number, first = 1): readonly string[] =>
  Array.from({ length: count }, (_, index) => `note number ${first + index} of the shift`);

it('counts an update once that comes again, and a message once that comes under two ids', async () => {
  const at = await stage();
  const { api, owner, path } = at;
  api.say({ from: owner, text: 'ribeye 14.2 lb' });
  const { updateId = 0 } = api.say({ from: owner, text: 'trim 1.1' });
  await idle(at);
  api.repeatUpdate(updateId);
  api.repeatUpdateUnderNewId(updateId);
  api.say({ from: owner, text: 'another trim 0.5' });
  await idle(at);
  expect(recordedTexts(path)).toEqual(['ribeye 14.2 lb', 'trim 1.1', 'another trim 0.5']);
  expect(texts(api, owner)).toHaveLength(1);
  expect(texts(api, owner)[0]).toContain('trim 1.6 lb');
});

it('takes updates up whose numbers jump, or begin anew and lower', async () => {
  const at = await stage();
  const { api, owner, path } = at;
  api.say({ from: owner, text: 'note one' });
  await idle(at);
  api.jumpUpdateIds(1_000_000);
  api.say({ from: owner, text: 'note two' });
  await idle(at);
  api.restartUpdateIds(17);
  api.say({ from: owner, text: 'note three' });
  await idle(at);
  expect(recordedTexts(path)).toEqual(['note one', 'note two', 'note three']);
});

const ANSWERS: readonly (readonly [name: string, answer: FaultAnswer])[] = [
  ['500', { kind: 'error', code: 500 }],
  ['a page of HTML', { kind: 'html', code: 502 }],
  ['a truncated answer', { kind: 'truncated' }],
  ['a dropped connection', { kind: 'drop' }],
  ['silence', { kind: 'mute' }],
];

it.each(ANSWERS.flatMap(([name, answer]) => [true, false].map((effect) => ({ name, answer, effect }))))(
  'sends nothing again after $name, effect $effect, and says so with the next message',
  async ({ answer, effect }) => {
    const at = await stage();
    const { api, owner, path } = at;
    api.fail({ method: 'sendMessage', when: { kind: 'first', count: 1 }, answer, effect });
    api.say({ from: owner, text: 'ribeye 14.2 lb' });
    await api.awaitCalls({ method: 'sendMessage' }, 1);
    api.say({ from: owner, text: 'trim 1.1' });
    await api.awaitCalls({ method: 'sendMessage' }, 2);
    await idle(at);
    const seen = texts(api, owner);
    expect(seen).toHaveLength(effect ? 2 : 1);
    expect(seen.at(-1)).toMatch(/^\(.*may not have reached you.*\)\nribeye 14\.2 lb[^]*trim 1\.1 lb/);
    expect(recordedTexts(path)).toEqual(['ribeye 14.2 lb', 'trim 1.1']);
  },
);

it.each(ANSWERS)('polls again after %s, and loses and doubles nothing', async (_, answer) => {
  const at = await stage();
  const { api, owner, path } = at;
  for (const effect of [true, false])
    api.fail({ method: 'getUpdates', when: { kind: 'chance', probability: 0.2, seed: 7 }, answer, effect });
  for (const text of entries(10)) {
    api.say({ from: owner, text });
    await api.awaitCalls({ method: 'sendMessage' }, api.calls({ method: 'sendMessage' }).length + 1);
  }
  await idle(at);
  expect(recordedTexts(path)).toEqual(entries(10));
  expect(texts(api, owner)).toHaveLength(10);
});

it('sends again what was refused for haste, in order, after the time that the service names', async () => {
  const at = await stage();
  const { api, owner } = at;
  api.fail({ method: 'sendMessage', when: { kind: 'first', count: 2 }, answer: { kind: 'error', code: 429, retryAfter: 1 } }); // prettier-ignore
  for (const item of ['ribeye', 'striploin', 'brisket'])
    api.say({ from: owner, text: `${item} is 7.40 now` });
  await idle(at);
  expect(texts(api, owner).map((text) => text.split(' ')[0])).toEqual(['ribeye', 'striploin', 'brisket']);
  const [first, second] = api.calls({ method: 'sendMessage' });
  expect((second?.atMs ?? 0) - (first?.atMs ?? 0)).toBeGreaterThanOrEqual(1000);
});

it('holds back one chat and no other', async () => {
  const at = await stage();
  const { api, bot, owner } = at;
  const lead = api.addUser({ first_name: 'Tobin' }).id;
  await bot.store.appoint('kitchen', { person: lead, name: 'Tobin', role: 'owner' });
  api.fail({ method: 'sendMessage', chat: owner, when: { kind: 'always' }, answer: { kind: 'error', code: 429, retryAfter: 3600 } }); // prettier-ignore
  api.say({ from: owner, text: 'ribeye 14.2 lb' });
  await api.awaitCalls({ method: 'sendMessage', chat: owner }, 1);
  api.say({ from: lead, text: 'striploin 12 lb' });
  await api.awaitCalls({ method: 'sendMessage', chat: lead }, 1);
  expect(texts(api, lead)[0]).toContain('striploin 12 lb, no price yet');
  expect(api.calls({ method: 'sendMessage', chat: owner })).toHaveLength(1);
});

it('tells the owner once of a member who blocked it, and goes on with the others', async () => {
  const at = await stage();
  const { api, bot, owner, path } = at;
  const lead = api.addUser({ first_name: 'Tobin' }).id;
  await bot.store.appoint('kitchen', { person: lead, name: 'Tobin', role: 'owner' });
  api.fail({
    method: 'sendMessage',
    chat: lead,
    when: { kind: 'always' },
    answer: { kind: 'error', code: 403 },
  });
  for (const text of ['note one', 'note two', 'note three']) api.say({ from: lead, text });
  api.say({ from: owner, text: 'note four' });
  await idle(at);
  expect(recordedTexts(path)).toHaveLength(4);
  expect(texts(api, owner).filter((text) => text.includes("can't write to Tobin"))).toHaveLength(1);
});

it(
  'takes up 10,000 updates of 200 people that waited through an hour without the service, each chat in order',
  { timeout: 300_000 },
  async () => {
    // On a busy machine an answer takes its time.
    const at = await stage({ ...QUICK, callSeconds: 30 });
    const { api, bot, path } = at;
    const people = Array.from({ length: 200 }, (_, index) => api.addUser({ first_name: `Cook ${index}` }).id);
    for (const [index, person] of people.entries())
      await bot.store.appoint('kitchen', { person, name: `Cook ${index}`, role: 'owner' });
    await api.outage('drop');
    for (let round = 0; round < 50; round += 1)
      for (const [index, from] of people.entries())
        api.say({ from, text: `note number ${round} of cook ${index}` });
    api.advance(3600);
    await api.recover();
    const begun = Date.now();
    await idle(at);
    console.log(`10,000 updates after an outage: ${Date.now() - begun} ms until the last reply`);
    const recorded = recordedTexts(path);
    expect(new Set(recorded).size).toBe(10_000);
    expect(recorded).toHaveLength(10_000);
    for (const index of people.keys())
      expect(recorded.filter((text) => text.endsWith(`of cook ${index}`))).toEqual(
        Array.from({ length: 50 }, (_, round) => `note number ${round} of cook ${index}`),
      );
    expect(api.countEffects({ method: 'sendMessage' })).toBe(10_000);
  },
);

it('leaves nothing out that waited for an hour, though a button was pressed meanwhile', async () => {
  const at = await stage();
  const { api, owner, path } = at;
  const hourAgo = Math.floor(Date.now() / 1000) - 3600;
  api.say({ from: owner, text: 'ribeye 14.2 lb', extra: { date: hourAgo - 60 } });
  await idle(at);
  await api.outage('drop');
  for (const [index, text] of entries(70).entries()) {
    api.say({ from: owner, text, extra: { date: hourAgo + index * 50 } });
    if (index > 0) continue;
    const card = api.seenFromBot(owner).at(-1);
    api.press({ user: owner, chat: owner, message_id: card?.message_id ?? 0, text: 'Undo' });
  }
  await api.recover();
  await idle(at);
  expect(recordedTexts(path).filter((text) => text.startsWith('note'))).toEqual(entries(70));
});

it('puts an update aside that fails three times, tells of it, and goes on', async () => {
  const path = newPath();
  const api = await startBotApi();
  onTestFinished(() => api.close());
  const owner = api.addUser({ first_name: 'Ines' }).id;
  const store = await openSqlite(path);
  let tries = 0;
  const append = (turn: Turn): ReturnType<typeof store.append> => {
    if (!turn.text.includes('poison')) return store.append(turn);
    tries += 1;
    return Promise.reject(new TypeError(`of ${turn.text}`));
  };
  const logged: string[] = [];
  const write = (fields: object, event: string): void =>
    void logged.push(JSON.stringify({ ...fields, event }));
  const log = { info: write, warn: write, error: write };
  const bot = await runBot({ service: api, owner, path, store: { ...store, append }, log });
  for (const text of ['note one', 'note poison', 'note two']) api.say({ from: owner, text });
  await idle({ api, bot, owner, path });
  expect(tries).toBe(3);
  expect(recordedTexts(path)).toEqual(['note one', 'note two']);
  expect(texts(api, owner)[1]).toContain('nothing of it was recorded');
  expect(logged.join('\n')).toContain('update parked');
  expect(logged.join('\n')).not.toContain('poison');
});

it('drops nothing while the store is in trouble, and catches up', async () => {
  const path = newPath();
  const api = await startBotApi();
  onTestFinished(() => api.close());
  const owner = api.addUser({ first_name: 'Ines' }).id;
  const store = await openSqlite(path);
  let isFull = true;
  const full = <Given extends unknown[], Result>(work: (...given: Given) => Promise<Result>) =>
    (...given: Given): Promise<Result> => isFull ? Promise.reject(new StoreError('full', path)) : work(...given); // prettier-ignore
  const failing = {
    ...store,
    append: full((turn: Turn) => store.append(turn)),
    receive: full((...given: Parameters<typeof store.receive>) => store.receive(...given)),
    settle: full((delivery: Delivery) => store.settle(delivery)),
  };
  const bot = await runBot({ service: api, owner, path, store: failing });
  for (const text of entries(5)) api.say({ from: owner, text });
  await api.awaitCalls({ method: 'getUpdates' }, 5);
  expect(api.waitingUpdates()).toHaveLength(5);
  isFull = false;
  await idle({ api, bot, owner, path });
  expect(recordedTexts(path)).toEqual(entries(5));
  expect(texts(api, owner)).toHaveLength(5);
});

it('sends what was on its way at a crash not again, and says so with the next message', async () => {
  const at = await stage();
  const { api, bot, owner, path } = at;
  await bot.close();
  const store = await openSqlite(path);
  await store.receive('7000000001', [{ id: 1, chat: 1, body: '{}' }], '2026-03-06T09:00:00.000Z');
  const letter = { chat: owner, kind: 'message', text: 'trim 1.1 lb' } as const;
  await store.settle({
    bot: '7000000001',
    update: 1,
    end: 'done',
    at: '2026-03-06T09:00:00.000Z',
    letters: [letter],
  });
  await store.takeLetter('7000000001', owner, { unknown: '', again: '', repeat: '' });
  await store.close();
  await runBot({ service: api, owner, path });
  api.say({ from: owner, text: 'note one' });
  await api.awaitCalls({ method: 'sendMessage' }, 1);
  expect(texts(api, owner)).toHaveLength(1);
  expect(texts(api, owner)[0]).toMatch(/^\(.*may not have reached you.*\)\n/);
  expect(repeated(api)).toEqual([]);
});

it('says of a voice note where nobody hears that it was not heard', async () => {
  const { api, owner } = await stage();
  api.sayVoice({ from: owner, duration: 3, base64: 'AAAA' });
  await api.awaitCalls({ method: 'sendMessage' }, 1);
  expect(texts(api, owner)[0]).toContain('Voice notes are off');
});

// A bot that is killed at any moment, under load, at a service with faults: no entry is lost or counted twice, and no message
// is sent twice. What may not have arrived is told of. Nothing of people, prices or the token is in its log.
import { setTimeout as wait } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { expect, it, onTestFinished } from 'vitest';
import { spawnBotApi, type RemoteBotApi } from './bot-api/remote.ts';
import { newPath, recordedTexts, spawnBot, webhookSettings } from './running.ts';

/** How the updates come, and how often the bot is killed. */
const WAYS = [
  ['polling', 30],
  ['a webhook', 12],
] as const;
/** The first call of a bot that is ready for updates. */
const HEARS = { polling: 'getMe', 'a webhook': 'setWebhook' } as const;
const PEOPLE = 20;
const EACH = 50;

const textOf = (person: number, number: number): string => `note number ${number} of cook ${person}`;

async function team(api: RemoteBotApi, path: string): Promise<readonly number[]> {
  const { openSqlite } = await import('../../src/storage/sqlite/open.ts');
  const { SETTINGS } = await import('../app/ports/store/samples.ts');
  const store = await openSqlite(path);
  await store.create('kitchen', SETTINGS);
  const people: number[] = [];
  for (let index = 0; index < PEOPLE; index += 1) {
    const { id } = await api.addUser({ first_name: `Cook ${index}` });
    await store.appoint('kitchen', { person: id, name: `Cook ${index}`, role: 'owner' });
    people.push(id);
  }
  await store.close();
  return people;
}

async function arm(api: RemoteBotApi): Promise<void> {
  const chance = (seed: number, probability: number) => ({ kind: 'chance', seed, probability }) as const;
  await api.fail({ method: 'getUpdates', when: chance(1, 0.1), answer: { kind: 'drop' }, effect: true });
  await api.fail({ method: 'getUpdates', when: chance(2, 0.1), answer: { kind: 'html', code: 502 } });
  await api.fail({ method: 'webhook', when: chance(6, 0.1), answer: { kind: 'drop' }, effect: true });
  await api.fail({ method: 'sendMessage', when: chance(3, 0.02), answer: { kind: 'drop' }, effect: true });
  await api.fail({ method: 'sendMessage', when: chance(4, 0.02), answer: { kind: 'error', code: 500 } });
  await api.fail({ method: 'sendMessage', when: chance(5, 0.02), answer: { kind: 'error', code: 429, retryAfter: 1 } }); // prettier-ignore
}

/** Notes are read back with nothing of their own: what tells a repeat is one reply more than there are entries. */
it.each(WAYS)('survives kills, by %s, %i times', { timeout: 300_000 }, async (way, kills) => {
  const api = await spawnBotApi();
  onTestFinished(() => api.close());
  const path = newPath();
  const people = await team(api, path);
  await arm(api);
  const environment = {
    DATABASE_URL: `sqlite:${path}`,
    TELEGRAM_BOT_TOKEN: api.token,
    TELEGRAM_API_ROOT: api.url,
    OWNER_TELEGRAM_ID: String(people[0]),
    LOG_LEVEL: 'trace',
    ...(way === 'polling' ? {} : await webhookSettings()),
  };
  let logged = '';
  const talking = talk(api, people, kills);
  for (let round = 0; round < kills; round += 1) {
    const before = await api.countEffects({ method: HEARS[way] });
    const bot = spawnBot(environment);
    // On a busy machine a start takes its time: now and then it is killed on its way, else at work.
    if (round % 4 > 0) await called(api, HEARS[way], before);
    await wait(Math.random() * 800);
    await bot.kill('SIGKILL');
    logged += bot.output();
  }
  await talking;
  await api.heal();
  const before = await api.countEffects({ method: HEARS[way] });
  const last = spawnBot(environment);
  await called(api, HEARS[way], before);
  await api.awaitConfirmed();
  await expect
    .poll(() => recordedTexts(path).length, { timeout: 60_000, interval: 200 })
    .toBeGreaterThanOrEqual(PEOPLE * EACH);
  await expect.poll(() => waitingLetters(path), { timeout: 60_000, interval: 200 }).toBe(0);
  expect(await last.kill('SIGTERM')).toBe(0);
  logged += last.output();

  const recorded = recordedTexts(path);
  for (const index of people.keys())
    expect(recorded.filter((text) => text.endsWith(`of cook ${index}`))).toEqual(
      Array.from({ length: EACH }, (_, number) => textOf(index, number)),
    );
  const sent = await api.effects({ method: 'sendMessage' });
  console.log(
    `${recorded.length} entries recorded, ${sent.length} replies arrived, ${kills} kills by ${way}`,
  );
  expect(repeatedBodies(sent.map(({ parameters, chat }) => `${chat ?? 0} ${String(parameters['text'])}`))).toEqual([]); // prettier-ignore
  expect(sent.length).toBeGreaterThan(PEOPLE * EACH * 0.8);
  expect(logged).toContain(way === 'polling' ? 'poll failed' : 'webhook set');
  expect(logged).not.toContain(api.token.split(':')[1]);
  expect(logged).not.toContain('of cook');
});

async function called(api: RemoteBotApi, method: string, before: number): Promise<void> {
  await expect
    .poll(() => api.countEffects({ method }), { timeout: 60_000, interval: 20 })
    .toBeGreaterThan(before);
}

async function talk(api: RemoteBotApi, people: readonly number[], kills: number): Promise<void> {
  for (let number = 0; number < EACH; number += 1) {
    for (const [index, from] of people.entries()) await api.say({ from, text: textOf(index, number) });
    await wait((kills * 900) / EACH);
  }
}

function waitingLetters(path: string): unknown {
  const db = new Database(path, { readonly: true });
  const count = db.prepare(`SELECT count(*) FROM outbox WHERE state IN ('waiting', 'sending')`).pluck().get();
  db.close();
  return count;
}

/** A reply that stands after a notice is the same reply. */
function repeatedBodies(texts: readonly string[]): readonly string[] {
  const bodies = texts.map((text) => text.replace(/\(.*\)\n/, ''));
  return bodies.filter((body, index) => bodies.indexOf(body) !== index);
}

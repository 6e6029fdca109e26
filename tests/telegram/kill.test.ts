// A bot that is killed at any moment, under load, at a service with faults: no entry is lost or counted twice, and no message
// is sent twice. What may not have arrived is told of. Nothing of people, prices or the token is in its log.
import { setTimeout as wait } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { expect, it, onTestFinished } from 'vitest';
import type { Fault } from './bot-api/faults/faults.ts';
import { spawnBotApi, type RemoteBotApi } from './bot-api/remote.ts';
import { newPath, recordedTexts, spawnBot, webhookSettings } from './running.ts';

/** Each cook of these has a kitchen with a test open, whose card shows the entries; the others share one without a test. */
const CARDS = 5;
/** How the updates come, and how often the bot is killed. */
const WAYS = [
  ['polling', 30],
  ['a webhook', 12],
] as const;
const PEOPLE = 10;
const EACH = 100;

const hasCard = (person: number): boolean => person >= PEOPLE - CARDS;

const textOf = (person: number, number: number): string =>
  hasCard(person) && number === 0
    ? 'ribeye 14.2 lb'
    : hasCard(person) && number % 2 === 0
      ? 'another fat 0.01'
      : `note number ${number} of cook ${person}`;

async function team(api: RemoteBotApi, path: string): Promise<readonly number[]> {
  const { openSqlite } = await import('../../src/storage/sqlite/open.ts');
  const { SETTINGS } = await import('../app/ports/store/samples.ts');
  const store = await openSqlite(path);
  await store.create('kitchen', SETTINGS);
  const people: number[] = [];
  for (let index = 0; index < PEOPLE; index += 1) {
    const { id } = await api.addUser({ first_name: `Cook ${index}` });
    const kitchen = hasCard(index) ? `kitchen-${index}` : 'kitchen';
    if (hasCard(index)) await store.create(kitchen, SETTINGS);
    await store.appoint(kitchen, { person: id, name: `Cook ${index}`, role: 'owner' });
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
  for (const method of ['editMessageText', 'setMessageReaction', 'answerCallbackQuery']) {
    await api.fail({ method, when: chance(7, 0.02), answer: { kind: 'drop' }, effect: true });
    await api.fail({ method, when: chance(8, 0.02), answer: { kind: 'error', code: 429, retryAfter: 1 } });
  }
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
    const bot = spawnBot(environment);
    await wait(500 + Math.random() * 1000);
    await bot.kill('SIGKILL');
    logged += bot.output();
  }
  await talking;
  await api.heal();
  const last = spawnBot(environment);
  await api.awaitConfirmed();
  await expect
    .poll(() => recordedTexts(path).length, { timeout: 60_000, interval: 200 })
    .toBeGreaterThanOrEqual(PEOPLE * EACH);
  for (const from of people) await api.say({ from, text: 'note the last one' });
  await api.awaitConfirmed();
  await expect
    .poll(() => recordedTexts(path).filter((text) => text.includes('last one')).length, { timeout: 60_000 })
    .toBe(PEOPLE);
  await expect.poll(() => waitingLetters(path), { timeout: 60_000, interval: 200 }).toBe(0);
  expect(await last.kill('SIGTERM')).toBe(0);
  logged += last.output();

  for (const [index, person] of people.entries()) expectEachOnce(path, { index, person });
  const sent = await api.effects({ method: 'sendMessage' });
  console.log(
    `${recordedTexts(path).length} entries recorded, ${sent.length} messages, ${kills} kills by ${way}`,
  );
  const notes = sent.filter(({ parameters }) => String(parameters['text']).includes('Noted: number'));
  const fromNotes = notes.filter(({ chat = 0 }) => !hasCard(people.indexOf(chat)));
  expect(repeatedBodies(fromNotes.map(({ parameters, chat }) => `${chat ?? 0} ${String(parameters['text'])}`))).toEqual([]); // prettier-ignore
  expect(fromNotes.length).toBeGreaterThan((PEOPLE - CARDS) * EACH * 0.8);
  for (const [index, chat] of people.entries()) await expectTold(api, { index, chat, path });
  expect(logged).toContain(way === 'polling' ? 'poll failed' : 'webhook set');
  expect(logged).not.toContain(api.token.split(':')[1]);
  expect(logged).not.toContain('of cook');
});

async function talk(api: RemoteBotApi, people: readonly number[], kills: number): Promise<void> {
  for (let number = 0; number < EACH; number += 1) {
    for (const [index, from] of people.entries()) await api.say({ from, text: textOf(index, number) });
    if (number % 10 === 9) for (const user of people.slice(PEOPLE - CARDS)) await pressUndo(api, user);
    await wait((kills * 900) / EACH);
  }
}

/** Where a card with the button stands by then. */
async function pressUndo(api: RemoteBotApi, user: number): Promise<void> {
  const card = (await api.seenFromBot(user)).findLast(({ buttons }) =>
    buttons.flat().some(({ text }) => text === 'Undo'),
  );
  if (card === undefined) return;
  const press = { user, chat: user, message_id: card.message_id, text: 'Undo' };
  await api.press(press).catch(() => undefined);
}

interface Fact {
  readonly entry: string;
  readonly type: string;
  readonly part: string | null;
  readonly target: string | null;
  readonly text: string;
}

function factsBy(path: string, person: number): readonly Fact[] {
  const db = new Database(path, { readonly: true });
  const facts = db
    .prepare<[string], Fact>(
      `SELECT fact.entry, type, json_extract(body, '$.part') AS part, json_extract(body, '$.target') AS target, message.text
       FROM fact JOIN message ON message.kitchen = fact.kitchen AND message.id = fact.message
       WHERE fact.speaker = ? ORDER BY seq`,
    )
    .all(`telegram:${person}`);
  db.close();
  return facts;
}

function expectEachOnce(path: string, { index, person }: { index: number; person: number }): void {
  const texts = factsBy(path, person).map(({ text }) => text);
  expect(texts.filter((text) => text !== 'Undo')).toEqual([
    ...Array.from({ length: EACH }, (_, number) => textOf(index, number)),
    'note the last one',
  ]);
}

/** The fat that was weighed and not taken back, as the card must show it. */
function fatOf(path: string, person: number): string {
  const facts = factsBy(path, person);
  const undone = new Set(facts.map(({ target }) => target));
  const weighed = facts.filter(
    ({ type, part, entry }) => type === 'weighed' && part === 'fat' && !undone.has(entry),
  );
  return String(Math.round(weighed.length) / 100);
}

interface Chat {
  readonly index: number;
  readonly chat: number;
  readonly path: string;
}

/** Each answer that is not known to have arrived was told of, and the card that stands last is right. */
async function expectTold(api: RemoteBotApi, { index, chat, path }: Chat): Promise<void> {
  const calls = await api.calls({ method: 'sendMessage', chat });
  const shown = [...calls, ...(await api.calls({ method: 'editMessageText', chat }))]
    .filter(({ took }) => took)
    .toSorted((a, b) => a.number - b.number);
  const doubtful = calls.filter(({ fault }) => fault !== undefined && !isRefused(fault));
  for (const { number } of doubtful)
    expect(shown.some((each) => each.number > number && NOTICE.test(String(each.parameters['text'])))).toBe(
      true,
    );
  if (!hasCard(index)) return;
  const card = (await api.seenFromBot(chat)).findLast(({ buttons }) =>
    buttons.flat().some(({ text }) => text === 'Done'),
  );
  expect(card?.text).toContain(`fat ${fatOf(path, chat)} lb`);
}

const NOTICE = /^\(A message of mine may not/;

const isRefused = ({ answer }: Fault): boolean => answer.kind === 'error' && answer.code === 429;

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

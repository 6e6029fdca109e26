// A bot that is killed at any moment while it edits cards and buttons are pressed, each press brought under two numbers: no entry
// and no press is lost or recorded twice, and in the end each card shows what stands in the log.
import { setTimeout as wait } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { expect, it, onTestFinished } from 'vitest';
import { spawnBotApi, type RemoteBotApi } from './bot-api/remote.ts';
import { newPath, spawnBot } from './running.ts';

const KILLS = 12;
const PEOPLE = 5;
const EACH_TIME = 2;
/** From the first press of a bot's life to its end, at most. */
const LONGEST_LIFE_MS = 800;
const OPENING = 'ribeye 14.2 lb';
const MORE_FAT = 'another fat 0.01';

/** A kitchen for each person, so that each has a card of their own. */
async function kitchens(api: RemoteBotApi, path: string): Promise<readonly number[]> {
  const { openSqlite } = await import('../../src/storage/sqlite/open.ts');
  const { SETTINGS } = await import('../app/ports/store/samples.ts');
  const store = await openSqlite(path);
  const people: number[] = [];
  for (let index = 0; index < PEOPLE; index += 1) {
    const { id } = await api.addUser({ first_name: `Cook ${index}` });
    await store.create(`kitchen-${index}`, SETTINGS);
    await store.appoint(`kitchen-${index}`, { person: id, name: `Cook ${index}`, role: 'owner' });
    people.push(id);
  }
  await store.close();
  return people;
}

async function arm(api: RemoteBotApi): Promise<void> {
  const chance = (seed: number, probability: number) => ({ kind: 'chance', seed, probability }) as const;
  await api.fail({ method: 'getUpdates', when: chance(1, 0.1), answer: { kind: 'drop' }, effect: true });
  for (const method of ['editMessageText', 'setMessageReaction', 'answerCallbackQuery'])
    await api.fail({ method, when: chance(2, 0.03), answer: { kind: 'drop' }, effect: true });
}

/** Presses made, under two numbers each. */
interface Pressing {
  presses: number;
}

/** Each button is pressed before its card is written anew. */
async function talk(api: RemoteBotApi, people: readonly number[], pressing: Pressing): Promise<void> {
  for (const user of people) await pressUndo(api, user, pressing);
  for (let time = 0; time < EACH_TIME; time += 1)
    for (const from of people) await api.say({ from, text: MORE_FAT });
}

/** On a busy machine a start takes its time: the bot is killed at work, not on its way there. */
async function greeted(api: RemoteBotApi, before: number): Promise<void> {
  await expect
    .poll(() => api.countEffects({ method: 'getMe' }), { timeout: 60_000, interval: 20 })
    .toBeGreaterThan(before);
}

/** Where a card with the button stands by then. */
async function pressUndo(api: RemoteBotApi, user: number, pressing: Pressing): Promise<void> {
  const seen = await api.seenFromBot(user);
  const card = seen.findLast(({ buttons }) => buttons.flat().some(({ text }) => text === 'Undo'));
  if (card === undefined) return;
  const { message_id } = card;
  const made = await api.press({ user, chat: user, message_id, text: 'Undo' }).catch(() => undefined);
  if (made?.updateId === undefined) return;
  pressing.presses += 1;
  await api.repeatUpdateUnderNewId(made.updateId);
}

interface Fact {
  readonly message: string;
  readonly entry: string;
  readonly type: string;
  readonly part: string | null;
  readonly target: string | null;
  readonly text: string;
}

function factsOf(path: string, person: number): readonly Fact[] {
  const db = new Database(path, { readonly: true });
  const facts = db
    .prepare<[string], Fact>(
      `SELECT fact.message, fact.entry, type, json_extract(body, '$.part') AS part, json_extract(body, '$.target') AS target,
              message.text
       FROM fact JOIN message ON message.kitchen = fact.kitchen AND message.id = fact.message
       WHERE fact.speaker = ? ORDER BY seq`,
    )
    .all(`telegram:${person}`);
  db.close();
  return facts;
}

/** The fat that was weighed and not taken back, as the card must show it. */
function fatIn(facts: readonly Fact[]): string {
  const undone = new Set(facts.map(({ target }) => target));
  const weighed = facts.filter(
    ({ type, part, entry }) => type === 'weighed' && part === 'fat' && !undone.has(entry),
  );
  return String(Math.round(weighed.length) / 100);
}

function waiting(path: string): unknown {
  const db = new Database(path, { readonly: true });
  const count = db
    .prepare(
      `SELECT (SELECT count(*) FROM inbox WHERE state = 'waiting') +
              (SELECT count(*) FROM outbox WHERE state IN ('waiting', 'sending'))`,
    )
    .pluck()
    .get();
  db.close();
  return count;
}

async function handled(api: RemoteBotApi, path: string): Promise<void> {
  await api.awaitConfirmed();
  await expect.poll(() => waiting(path), { timeout: 120_000, interval: 100 }).toBe(0);
}

it(`survives ${KILLS} kills while cards are edited and buttons pressed`, { timeout: 900_000 }, async () => {
  const api = await spawnBotApi();
  onTestFinished(() => api.close());
  const path = newPath();
  const people = await kitchens(api, path);
  await arm(api);
  const environment = {
    DATABASE_URL: `sqlite:${path}`,
    TELEGRAM_BOT_TOKEN: api.token,
    TELEGRAM_API_ROOT: api.url,
  };
  const pressing: Pressing = { presses: 0 };
  for (const text of [OPENING, MORE_FAT]) for (const from of people) await api.say({ from, text });
  for (let kill = 0; kill < KILLS; kill += 1) {
    const before = await api.countEffects({ method: 'getMe' });
    const bot = spawnBot(environment);
    await greeted(api, before);
    await handled(api, path);
    const talking = talk(api, people, pressing);
    await wait(Math.random() * LONGEST_LIFE_MS);
    await bot.kill('SIGKILL');
    await talking;
  }
  await api.heal();
  const last = spawnBot(environment);
  await handled(api, path);
  expect(await last.kill('SIGTERM')).toBe(0);

  let undone = 0;
  for (const person of people) {
    const facts = factsOf(path, person);
    const typed = facts.filter(({ type }) => type !== 'undone').map(({ text }) => text);
    expect(typed).toEqual([OPENING, ...Array.from({ length: 1 + KILLS * EACH_TIME }, () => MORE_FAT)]);
    const targets = facts.flatMap(({ target }) => target ?? []);
    expect(new Set(targets).size, 'each entry is taken back once').toBe(targets.length);
    undone += targets.length;
    const seen = await api.seenFromBot(person);
    const card = seen.findLast(({ buttons }) => buttons.flat().some(({ text }) => text === 'Done'));
    expect(card?.text).toContain(`fat ${fatIn(facts)} lb`);
  }
  console.log(`${pressing.presses} presses under two numbers, ${undone} taken back, ${KILLS} kills`);
  expect(pressing.presses).toBe(PEOPLE * KILLS);
  expect(undone, 'what each press stood under is taken back').toBe(pressing.presses);
});

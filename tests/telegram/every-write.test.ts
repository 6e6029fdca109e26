// A bot that ends at any one of its writes to the store, before or after it: whatever the write was, the next one goes on, and it
// all comes to the same.
import Database from 'better-sqlite3';
import { expect, it } from 'vitest';
import { openTable } from '../../src/app/turn.ts';
import { startBot } from '../../src/channels/telegram/bot.ts';
import { readTeamWish } from '../../src/language/team-words.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import type { SqliteStore } from '../../src/storage/sqlite/store.ts';
import { SETTINGS } from '../app/ports/store/samples.ts';
import type { BotApi } from './bot-api/start.ts';
import { newPath, QUICK, recordedTexts, runBot, voice, words } from './running.ts';
import { quiet, service } from './talk.ts';

const WRITES: ReadonlySet<string> = new Set([
  'receive', 'append', 'settle', 'noteFailure', 'noteInterrupted', 'takeLetter', 'endLetter', 'appoint', 'rename',
]); // prettier-ignore

interface Dying {
  readonly store: SqliteStore;
  readonly died: Promise<void>;
  readonly writes: () => number;
}

/** From the given write on nothing comes back any more, as if the process had been killed there. */
function dyingAt(store: SqliteStore, at: number, when: 'before' | 'after'): Dying {
  let count = 0;
  let isDead = false;
  let die = (): void => undefined;
  const died = new Promise<void>((resolve) => (die = resolve));
  const never = (): Promise<never> => {
    isDead = true;
    die();
    return new Promise(() => undefined);
  };
  const wrapped = Object.entries(store).map(([name, work]) => [
    name,
    async (...given: readonly unknown[]): Promise<unknown> => {
      if (isDead) return never();
      const isLast = WRITES.has(name) && (count += 1) === at;
      if (isLast && when === 'before') return never();
      const result = await (work as (...all: readonly unknown[]) => Promise<unknown>)(...given);
      return isLast ? never() : result;
    },
  ]);
  return { store: Object.fromEntries(wrapped) as SqliteStore, died, writes: () => count };
}

const LINES = [
  'ribeye 14.2 lb at 7.40',
  'trim 1.1',
  'trim 1.3',
  'replace',
  'fat 1.9',
  'ribeye is 7.95 now',
  'portions weigh 10.9',
  'undo',
  'portions weigh 11',
  'done',
];

async function talked(): Promise<{ api: BotApi; owner: number; path: string }> {
  const api = await service();
  const owner = api.addUser({ first_name: 'Ines' }).id;
  const path = newPath();
  for (const text of LINES) api.say({ from: owner, text });
  return { api, owner, path };
}

/** Runs until it dies or has done everything; how many writes that took. */
async function runUntilDead(
  { api, owner, path }: { api: BotApi; owner: number; path: string },
  at: number,
  when: 'before' | 'after',
): Promise<number> {
  const real = await openSqlite(path);
  await real.create('kitchen', SETTINGS);
  const { store, died, writes } = dyingAt(real, at, when);
  const table = await openTable({ store, id: 'kitchen', ...voice });
  const starting = startBot({
    service: { token: api.token, apiRoot: api.url },
    owner: { person: owner, kitchen: 'kitchen' },
    ...{ tables: new Map([['kitchen', table]]), ears: new Map(), post: store, words, pace: QUICK },
    log: { info: () => undefined, warn: () => undefined, error: () => undefined },
    readTeamWish: (line) => readTeamWish(voice.language.team, line),
    onClaim: () => undefined,
  });
  const finished = starting.then(() => quiet({ api, bot: { store: real } }));
  await Promise.race([died, finished]);
  void starting.then((bot) => {
    bot.stop();
  });
  await real.close();
  finished.catch(() => undefined);
  return writes();
}

const bodies = (api: BotApi, chat: number): readonly string[] =>
  api
    .effects({ method: 'sendMessage', chat })
    .map(({ parameters }) => String(parameters['text']).replace(/^\(.*\)\n/, ''));

/** What stands in the log, without the times. */
function factsIn(path: string): readonly unknown[] {
  const db = new Database(path, { readonly: true });
  const facts = db.prepare('SELECT message, entry, test, item, type, body FROM fact ORDER BY seq').all();
  db.close();
  return facts;
}

/** Letters that may not have arrived and are kept to be offered. */
function offeredIn(path: string): unknown {
  const db = new Database(path, { readonly: true });
  const count = db.prepare(`SELECT count(*) FROM outbox WHERE state IN ('unknown', 'offered')`).pluck().get();
  db.close();
  return count;
}

const results = (api: BotApi, chat: number): readonly string[] =>
  bodies(api, chat).filter((text) => text.includes('Cut off:'));

it('comes to the same, whichever write it ends at', { timeout: 600_000 }, async () => {
  const whole = await talked();
  const writes = await runUntilDead(whole, Infinity, 'after');
  expect(results(whole.api, whole.owner)).toHaveLength(1);
  expect(recordedTexts(whole.path).length).toBeGreaterThan(7);
  expect(writes).toBeGreaterThan(25);
  for (let at = 1; at <= writes; at += 1)
    for (const when of ['before', 'after'] as const) {
      const stage = await talked();
      const { api, owner, path } = stage;
      await runUntilDead(stage, at, when);
      const next = await runBot({ service: api, owner, path });
      await quiet({ api, bot: next });
      const told = `${when} write ${at} of ${writes}`;
      expect(factsIn(path), told).toEqual(factsIn(whole.path));
      const arrived = results(api, owner).length;
      expect(arrived, told).toBeLessThanOrEqual(1);
      if (arrived === 0) expect(offeredIn(path), told).toBe(1);
      await next.close();
      await api.close();
    }
});

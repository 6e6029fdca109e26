// A process that is killed at any moment has lost no turn that it said was stored, and stored none twice.
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { expect, it } from 'vitest';
import { connectToRead } from '../../src/storage/sqlite/connection.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import { wholeTurns } from './numbered-turns.ts';
import { kill, scratchFolder, startScript } from './scratch.ts';

const KILLS = 24;

/** Most are killed while they write, every fourth while it starts. */
async function runAndKill(path: string, round: number, first: number): Promise<number> {
  const script = startScript('appending.script.ts', [path, String(first)]);
  if (round % 4 === 3) await wait(Math.random() * 700);
  else await script.begun.then(() => wait(Math.random() * 100));
  await kill(script);
  return Number(script.lines.at(-1) ?? first - 1);
}

async function storedTurns(path: string): Promise<number> {
  const store = await openSqlite(path);
  const count = (await store.kitchens()).length === 0 ? 0 : await wholeTurns(store);
  const look = connectToRead(path);
  expect(look.pragma('integrity_check', { simple: true })).toBe('ok');
  expect(look.pragma('foreign_key_check')).toEqual([]);
  look.close();
  await store.close();
  return count;
}

it(
  `keeps every acknowledged turn, once and whole, through ${KILLS} kills`,
  { timeout: 240_000 },
  async () => {
    const path = join(scratchFolder(), 'kitchen.db');
    let acknowledged = 0;
    for (let round = 0; round < KILLS; round += 1) {
      // The last turn that was said is delivered again: it may not count twice.
      acknowledged = Math.max(acknowledged, await runAndKill(path, round, Math.max(1, acknowledged)));
      const stored = await storedTurns(path);
      expect(stored, `after kill ${round + 1}`).toBeGreaterThanOrEqual(acknowledged);
      // One may be stored that could not be said any more.
      expect(stored, `after kill ${round + 1}`).toBeLessThanOrEqual(acknowledged + 1);
    }
    expect(acknowledged).toBeGreaterThan(KILLS);
  },
);

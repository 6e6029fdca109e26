// Durable turns per second against bare commits of one row of the same length, taken in turns in the same run.
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { ask, openBench } from './kitchen.ts';
import { median, microseconds, round } from './measure.ts';

const ROUNDS = 12;
const TESTS_A_ROUND = 60;
const LINES = [
  'ribeye 14.2 lb at 7.40',
  'trim 1.1',
  'fat 1.9',
  '12 portions 16 oz',
  'portions weigh 11.2',
  'took 25 minutes',
  'done',
];

export async function measureTurn(
  folder: string,
): Promise<{ durableTurnsPerSecond: number; bareCommitsPerSecond: number; ratio: number }> {
  const { store, table } = await openBench(join(folder, 'turn.db'));
  const commit = bareCommit(join(folder, 'bare.db'));
  const turns: number[] = [];
  const commits: number[] = [];
  for (let cycle = 0; cycle < ROUNDS; cycle += 1) {
    const count = TESTS_A_ROUND * LINES.length;
    const beforeTurns = process.hrtime.bigint();
    for (let test = 0; test < TESTS_A_ROUND; test += 1)
      for (const [index, line] of LINES.entries()) await ask(table, `${cycle}-${test}-${index}`, line);
    turns.push((count / microseconds(beforeTurns)) * 1e6);
    const beforeCommits = process.hrtime.bigint();
    for (let row = 0; row < count; row += 1) commit();
    commits.push((count / microseconds(beforeCommits)) * 1e6);
  }
  await store.close();
  const [durable, bare] = [median(turns), median(commits)];
  return {
    durableTurnsPerSecond: round(durable),
    bareCommitsPerSecond: round(bare),
    ratio: round(durable / bare, 2),
  };
}

/** One row of some 300 characters in a transaction of its own, with the same safety as the store's. */
function bareCommit(path: string): () => void {
  const db = new Database(path);
  db.pragma('journal_mode = WAL');
  db.pragma('synchronous = FULL');
  db.exec('CREATE TABLE line (id INTEGER PRIMARY KEY, body TEXT NOT NULL) STRICT');
  const insert = db.prepare('INSERT INTO line (body) VALUES (?)');
  const body = 'x'.repeat(300);
  return () => {
    db.exec('BEGIN IMMEDIATE');
    insert.run(body);
    db.exec('COMMIT');
  };
}

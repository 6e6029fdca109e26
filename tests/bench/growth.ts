// What a question of cost takes after a thousand and after a hundred thousand closed tests.
import { join } from 'node:path';
import { changedViews } from '../../src/app/views.ts';
import type { Store } from '../../src/app/ports/store.ts';
import { decimal } from '../../src/core/decimal.ts';
import type { Fact, Recorded } from '../../src/core/facts.ts';
import { evolve, type Kitchen, newKitchen } from '../../src/core/kitchen.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import { ask, KITCHEN, openBench, SETTINGS } from './kitchen.ts';
import { median, microseconds, percentile, round } from './measure.ts';

const ITEMS = [
  'ribeye',
  'striploin',
  'tenderloin',
  'top sirloin',
  'brisket',
  'short loin',
  'pork loin',
  'lamb rack',
  'salmon',
];
const ROUNDS = 9;
const ASKS = 600;

export interface Growth {
  readonly askCostP99UsAt1k: number;
  readonly askCostP99UsAt100k: number;
  readonly ratio: number;
}

export async function measureGrowth(folder: string): Promise<Growth> {
  const [small, large] = [join(folder, '1k.db'), join(folder, '100k.db')];
  await fill(small, 1_000);
  await fill(large, 100_000);
  const [few, many] = [await openBench(small), await openBench(large)];
  const times = { few: [] as number[], many: [] as number[] };
  for (let cycle = 0; cycle < ROUNDS; cycle += 1) {
    times.few.push(await askMany(few.table, `f${cycle}`));
    times.many.push(await askMany(many.table, `m${cycle}`));
  }
  await few.store.close();
  await many.store.close();
  const [at1k, at100k] = [median(times.few), median(times.many)];
  return {
    askCostP99UsAt1k: round(at1k, 1),
    askCostP99UsAt100k: round(at100k, 1),
    ratio: round(at100k / at1k, 2),
  };
}

async function askMany(table: Awaited<ReturnType<typeof openBench>>['table'], name: string): Promise<number> {
  const times: number[] = [];
  for (let index = 0; index < ASKS; index += 1) {
    const begin = process.hrtime.bigint();
    await ask(table, `${name}-${index}`, `what's ${ITEMS[index % ITEMS.length] ?? ''} at`);
    times.push(microseconds(begin));
  }
  return percentile(times, 0.99);
}

/** Closed tests, each appended as one turn with all its facts. */
async function fill(path: string, tests: number): Promise<void> {
  const store = await openSqlite(path);
  await store.create(KITCHEN, SETTINGS);
  let kitchen = newKitchen(SETTINGS);
  for (let test = 1; test <= tests; test += 1) kitchen = await append(store, kitchen, test);
  await store.close();
}

async function append(store: Store, before: Kitchen, test: number): Promise<Kitchen> {
  const item = ITEMS[test % ITEMS.length] ?? '';
  const at = new Date(Date.UTC(2026, 0, 1) + test * 60_000).toISOString();
  const grams = decimal(String(6000 + (test % 900)));
  const made: Fact[] = [
    { type: 'received', item, grams, perLb: decimal('7.4') },
    { type: 'weighed', part: 'trim', grams: decimal(String(400 + (test % 90))), mode: 'set' },
    { type: 'portioned', mode: 'set', count: 12, eachGrams: decimal('400') },
    { type: 'closed', flagged: false },
  ];
  const facts = made.map((fact, index): Recorded => ({
    entry: `${test}.${index}`,
    speaker: `cook${test % 5}`,
    at,
    test,
    item,
    fact,
  }));
  const after = facts.reduce(evolve, before);
  const message = String(test);
  await store.append({
    kitchen: KITCHEN,
    message,
    speaker: 'cook',
    at,
    text: '',
    outcome: 'recorded',
    reply: '',
    facts,
    views: changedViews(before, after),
  });
  return after;
}

// What a question takes after a thousand and after a hundred thousand closed tests.
import { join } from 'node:path';
import { changedViews } from '../../src/app/views.ts';
import type { Store } from '../../src/app/ports/store.ts';
import { decimal } from '../../src/core/decimal.ts';
import type { Fact, Recorded } from '../../src/core/facts.ts';
import { evolve, type Kitchen, newKitchen } from '../../src/core/kitchen.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import { ask, ASKED_AT, KITCHEN, openBench, SETTINGS } from './kitchen.ts';
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

/** What is asked about an item, by the name of its figures. */
const QUESTIONS = {
  askCost: (item: string) => `what's ${item} at`,
  askVerdict: (item: string) => `cut or buy ${item}`,
  askHistory: (item: string) => `${item} history`,
  askOrder: (item: string) => `how much ${item} for 40 16-ounce`,
  askYield: (item: string) => `${item} yield`,
  askHeavy: (item: string) => `am I cutting heavy on ${item}`,
} as const;
type Question = keyof typeof QUESTIONS;
const ASKED = Object.keys(QUESTIONS) as readonly Question[];

/** 99th percentiles; `ratio` is that of `askCost`. */
export type Growth = Readonly<
  Record<`${Question}P99UsAt1k` | `${Question}P99UsAt100k` | `${Question}Ratio` | 'ratio', number>
>;

export async function measureGrowth(folder: string): Promise<Growth> {
  const [small, large] = [join(folder, '1k.db'), join(folder, '100k.db')];
  await fill(small, 1_000);
  await fill(large, 100_000);
  const [few, many] = [await openBench(small), await openBench(large)];
  const found = ASKED.map((question) => [question, { few: [] as number[], many: [] as number[] }] as const);
  for (let cycle = 0; cycle < ROUNDS; cycle += 1)
    for (const [question, times] of found) {
      times.few.push(await askMany(few.table, question, `f${cycle}`));
      times.many.push(await askMany(many.table, question, `m${cycle}`));
    }
  await few.store.close();
  await many.store.close();
  const figures = found.flatMap(([question, times]) => figuresOf(question, times));
  const all = Object.fromEntries(figures) as Omit<Growth, 'ratio'>;
  return { ...all, ratio: all.askCostRatio };
}

function figuresOf(
  question: Question,
  times: { few: number[]; many: number[] },
): readonly [string, number][] {
  const [at1k, at100k] = [median(times.few), median(times.many)];
  return [
    [`${question}P99UsAt1k`, round(at1k, 1)],
    [`${question}P99UsAt100k`, round(at100k, 1)],
    [`${question}Ratio`, round(at100k / at1k, 2)],
  ];
}

type Table = Awaited<ReturnType<typeof openBench>>['table'];

async function askMany(table: Table, question: Question, name: string): Promise<number> {
  const times: number[] = [];
  for (let index = 0; index < ASKS; index += 1) {
    const text = QUESTIONS[question](ITEMS[index % ITEMS.length] ?? '');
    const begin = process.hrtime.bigint();
    const { outcome } = await ask(table, `${question}-${name}-${index}`, text);
    times.push(microseconds(begin));
    if (outcome !== 'answered') throw new Error(`"${text}" was not answered`);
  }
  return percentile(times, 0.99);
}

/** Closed tests, a minute apart up to the time of asking, each appended as one turn with all its facts. */
async function fill(path: string, tests: number): Promise<void> {
  const store = await openSqlite(path);
  await store.create(KITCHEN, SETTINGS);
  let kitchen = newKitchen(SETTINGS);
  for (let test = 1; test <= tests; test += 1) {
    const ago = (tests - test) * 60_000;
    kitchen = await append(store, kitchen, { test, at: new Date(Date.parse(ASKED_AT) - ago).toISOString() });
  }
  await store.close();
}

async function append(
  store: Store,
  before: Kitchen,
  { test, at }: { test: number; at: string },
): Promise<Kitchen> {
  const item = ITEMS[test % ITEMS.length] ?? '';
  const grams = decimal(String(6000 + (test % 900)));
  const made: Fact[] = [
    { type: 'received', item, grams, perLb: decimal('7.4'), supplier: `yard ${test % 3}` },
    { type: 'readyCutPriced', item, perLb: decimal('9.85') },
    { type: 'weighed', part: 'trim', grams: decimal(String(400 + (test % 90))), mode: 'set' },
    { type: 'portioned', mode: 'set', count: 12, eachGrams: decimal('400') },
    { type: 'listed', eachGrams: ['396', '401', '408'].map(decimal) },
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

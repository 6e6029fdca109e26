// What a summary looks back on, read by the index of closing times.
import { figures } from '../core/figures.ts';
import { type Kitchen, poolOf } from '../core/kitchen.ts';
import { type LedgerLine, standingLines } from '../core/ledger.ts';
import { readyCutKey } from '../core/memory.ts';
import type { Stretch } from '../core/period.ts';
import { foldTest } from '../core/test.ts';
import { testVerdict } from '../core/verdict.ts';
import type { PastDays } from '../intents/intent.ts';
import type { KitchenId, Store, TestRow } from './ports/store.ts';

/** Of so many items at most the verdicts are looked at: more does not fit a summary. */
const MOST_ITEMS = 20;

interface Looking {
  readonly store: Pick<Store, 'testsClosed' | 'closedTests' | 'testFacts'>;
  readonly id: KitchenId;
  readonly kitchen: Kitchen;
  readonly stretch: Stretch;
}

export async function pastDays(looking: Looking & { readonly at: string }): Promise<PastDays> {
  const { store, id, kitchen, stretch, at } = looking;
  const tests = await store.testsClosed(id, stretch);
  const cut = new Map<string, TestRow[]>();
  for (const test of tests) cut.set(test.item, [...(cut.get(test.item) ?? []), test]);
  const priced = [...kitchen.items].filter((item) =>
    pricesOf(kitchen, item).some((line) => line.at >= stretch.from && line.at < stretch.to),
  );
  const choices = new Map<string, readonly string[]>();
  for (const item of [...new Set([...cut.keys(), ...priced])].slice(0, MOST_ITEMS))
    choices.set(item, await choicesOf(looking, item, cut.get(item) ?? []));
  return { stretch, at, tests, choices };
}

const pricesOf = ({ memory }: Kitchen, item: string): readonly LedgerLine[] =>
  standingLines(memory.get(readyCutKey(item)) ?? []);

/** The verdict that held before these days, those of their tests at closing, and the one that held at the end. */
async function choicesOf(
  looking: Looking,
  item: string,
  tests: readonly TestRow[],
): Promise<readonly string[]> {
  const { store, id, stretch } = looking;
  const newest = await store.closedTests(id, item, tests.length + MOST_LATER);
  const before = newest.find(({ closedAt = '' }) => closedAt < stretch.from);
  const last = tests.at(-1) ?? before;
  const first = before === undefined ? [] : await choiceAt(looking, before, stretch.from);
  const after = last === undefined ? [] : await choiceAt(looking, last, stretch.to);
  return [...first, ...tests.flatMap(({ figures: stored }) => stored?.['choice'] ?? []), ...after];
}

/** Tests that were closed since, where the days are not the newest. */
const MOST_LATER = 60;

/** As it was at closing, unless another ready-cut price was said since: that one holds for the tests of its item. */
async function choiceAt(
  { store, id, kitchen }: Looking,
  { id: test, item, closedAt = '', figures: stored }: TestRow,
  when: string,
): Promise<readonly string[]> {
  const price = pricesOf(kitchen, item).findLast(({ at }) => at < when);
  const atClosing = stored?.['choice'];
  if (price === undefined || price.at < closedAt) return atClosing === undefined ? [] : [atClosing];
  const readyCutPerLb = price.value !== undefined && 'amount' in price.value ? price.value.amount : undefined;
  const { choice } = testVerdict({
    figures: figures(foldTest(await store.testFacts(id, test)), kitchen.settings),
    ...(readyCutPerLb === undefined ? {} : { readyCutPerLb }),
    pool: poolOf(kitchen, item),
  });
  return choice === 'unknown' ? [] : [choice];
}

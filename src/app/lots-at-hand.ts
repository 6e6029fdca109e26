// Reads what an entry about grinding may touch and what has left the memory: the newest lots, and closed tests whose trim may be
// in the grinder.
import type { Kind } from '../core/entry.ts';
import type { Kitchen } from '../core/kitchen.ts';
import { foldLot } from '../core/lots.ts';
import { foldTest } from '../core/test.ts';
import { MOST_LOTS } from '../intents/grind-log-table.ts';
import type { KitchenId, Store } from './ports/store.ts';

const LOOKS_AT_LOTS: ReadonlySet<Kind> = new Set([
  'grind',
  'discard',
  'askGrindLog',
  'cleaned',
  'undo',
  'correct',
]);
const LOTS_READ = 10;
/** What looks for trim that no lot has taken. */
export const LOOKS_FOR_TRIM: ReadonlySet<Kind> = new Set(['grind', 'discard']);

/** How far back a closed test may lie, and how many of them are read: raw trim keeps two days. */
const TESTS_BACK_MS = 2 * 24 * 60 * 60 * 1000;
const TESTS_READ = 40;

export const looksAtLots = (kind: Kind): boolean => LOOKS_AT_LOTS.has(kind);

export async function withLots(
  store: Store,
  id: KitchenId,
  at: { kitchen: Kitchen; speaker: string; isLog: boolean },
): Promise<Kitchen> {
  const { kitchen } = at;
  const own =
    kitchen.speakers.get(at.speaker)?.recent.flatMap(({ facts }) => facts.map(({ lot }) => lot)) ?? [];
  const wanted = new Set(
    [...(await store.newestLots(id, at.isLog ? MOST_LOTS : LOTS_READ)), ...own].filter(
      (lot) => lot !== undefined,
    ),
  );
  const lots = new Map(kitchen.lots);
  for (const lot of [...wanted].filter((each) => !lots.has(each))) {
    const facts = await store.lotFacts(id, lot);
    if (facts.length > 0) lots.set(lot, foldLot(facts));
  }
  // In the order of grinding, for whoever takes the newest.
  return { ...kitchen, lots: new Map([...lots].sort(([a], [b]) => a - b)) };
}

/** With the closed tests that the trim may come from. */
export async function withTrimTests(
  store: Store,
  id: KitchenId,
  at: { kitchen: Kitchen; at: string },
): Promise<Kitchen> {
  const since = new Date(Date.parse(at.at) - TESTS_BACK_MS).toISOString();
  const tests = new Map(at.kitchen.tests);
  for (const test of await store.closedSince(id, since, TESTS_READ)) {
    if (tests.has(test)) continue;
    const facts = await store.testFacts(id, test);
    if (facts.length > 0) tests.set(test, foldTest(facts));
  }
  return { ...at.kitchen, tests };
}

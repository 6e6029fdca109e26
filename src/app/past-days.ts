// What a summary looks back on, read by the index of closing times.
import type { Stretch } from '../core/period.ts';
import type { PastDays, PastTest } from '../intents/intent.ts';
import type { KitchenId, Store } from './ports/store.ts';

/** Of so many items at most the test before is looked for: more does not fit a summary. */
const MOST_ITEMS = 20;

export async function pastDays(
  store: Pick<Store, 'testsClosed' | 'closedTests'>,
  id: KitchenId,
  stretch: Stretch,
): Promise<PastDays> {
  const tests = await store.testsClosed(id, stretch);
  const counts = new Map<string, number>();
  for (const { item } of tests) counts.set(item, (counts.get(item) ?? 0) + 1);
  const before = new Map<string, PastTest>();
  for (const [item, count] of [...counts].slice(0, MOST_ITEMS)) {
    const newest = await store.closedTests(id, item, count + 1);
    const last = newest.find(({ closedAt = '' }) => closedAt < stretch.from);
    if (last !== undefined) before.set(item, last);
  }
  return { stretch, tests, before };
}

// Closed tests that an entry is about though they have left the memory: portions are cooked hours after the test was closed.
import type { Kind } from '../core/entry.ts';
import type { Kitchen } from '../core/kitchen.ts';
import { foldTest } from '../core/test.ts';
import type { KitchenId, Store } from './ports/store.ts';
import type { Understood } from './understand.ts';

/** What is said of the newest closed test of an item. */
export const ABOUT_CLOSED: readonly Kind[] = ['cooked', 'served', 'askProducts'];

/** The kitchen with the newest closed test of each item that such an entry names. */
export async function withTestsAskedAbout(
  { store, id }: { readonly store: Store; readonly id: KitchenId },
  kitchen: Kitchen,
  understood: readonly Understood[],
): Promise<Kitchen> {
  const items = understood.flatMap((one) =>
    'entry' in one && ABOUT_CLOSED.includes(one.entry.kind) && 'item' in one.entry
      ? (one.entry.item ?? [])
      : [],
  );
  const tests = new Map(kitchen.tests);
  for (const item of items) {
    const [row] = await store.closedTests(id, item, 1);
    if (row !== undefined && !tests.has(row.id))
      tests.set(row.id, foldTest(await store.testFacts(id, row.id)));
  }
  return tests.size === kitchen.tests.size ? kitchen : { ...kitchen, tests };
}

// A kitchen on a database in memory, by the same path as a kept one.
import type { Settings } from '../core/kitchen.ts';
import { foldTest } from '../core/test.ts';
import type { Json } from '../core/entry-json.ts';
import type { OpenScratch, Scratch } from './ports/scratch.ts';
import type { Store } from './ports/store.ts';
import { testJson } from './test-json.ts';
import { openTable } from './turn.ts';
import type { Voice } from './voice.ts';

const KITCHEN = 'scratch';

export function scratchOpener(openStore: () => Promise<Store>, voice: Voice): OpenScratch {
  return async (settings: Settings): Promise<Scratch> => {
    const store = await openStore();
    await store.create(KITCHEN, settings);
    const table = await openTable({ store, id: KITCHEN, ...voice });
    return { ...table, tests: () => allTests(store, table.kitchen) };
  };
}

async function allTests(store: Store, kitchen: Scratch['kitchen']): Promise<readonly Json[]> {
  const { tests } = await store.views(KITCHEN);
  const found: Json[] = [];
  for (const { id } of tests.toSorted((a, b) => a.id - b.id)) {
    const test = foldTest(await store.testFacts(KITCHEN, id));
    if (test.status !== 'dropped') found.push(testJson(kitchen(), test));
  }
  return found;
}

// Makes the read models of a kitchen anew from its log, and tells whether they differed.
import { evolve, type Kitchen, newKitchen } from '../core/kitchen.ts';
import { toPlainJson } from '../core/plain-json.ts';
import type { KitchenId, LotRow, Store, TestRow, Views } from './ports/store.ts';
import { changedViews } from './views.ts';

export interface Rebuilt {
  readonly facts: number;
  readonly differed: boolean;
}

export async function rebuild(store: Store, id: KitchenId): Promise<Rebuilt> {
  const stored = await store.load(id);
  if (stored === undefined) throw new Error(`there is no kitchen ${id}`);
  let kitchen: Kitchen = newKitchen(stored.settings);
  const tests = new Map<number, TestRow>();
  const lots = new Map<number, LotRow>();
  let facts = 0;
  for await (const recorded of store.facts(id)) {
    const next = evolve(kitchen, recorded);
    const changed = changedViews(kitchen, next);
    for (const row of changed.tests) tests.set(row.id, row);
    for (const row of changed.lots) lots.set(row.id, row);
    kitchen = next;
    facts += 1;
  }
  const rows = { tests: [...tests.values()], lots: [...lots.values()] };
  const anew = sorted({ ...changedViews(newKitchen(stored.settings), kitchen), ...rows });
  const differed = toPlainJson(anew) !== toPlainJson(sorted(await store.views(id)));
  if (differed) await store.replaceViews(id, anew);
  return { facts, differed };
}

/** By name, so that two of the same content are the same. */
function sorted({ tests, lots, memory, pools, names }: Views): Views {
  const byKey = <Row extends readonly [string, ...unknown[]]>(rows: readonly Row[]): readonly Row[] =>
    rows.toSorted(([a, b], [c, d]) =>
      `${a} ${typeof b === 'string' ? b : ''}` < `${c} ${typeof d === 'string' ? d : ''}` ? -1 : 1,
    );
  return {
    tests: tests.toSorted((a, b) => a.id - b.id),
    lots: lots.toSorted((a, b) => a.id - b.id),
    memory: byKey(memory),
    pools: byKey(pools),
    names: byKey(names),
  };
}

import type { Store } from '../../../../src/app/ports/store.ts';
import type { Recorded } from '../../../../src/core/facts.ts';

/** All facts of a kitchen, in the order of the log. */
export async function wholeLog(store: Store, kitchen: string): Promise<readonly Recorded[]> {
  const facts: Recorded[] = [];
  for await (const fact of store.facts(kitchen)) facts.push(fact);
  return facts;
}

// A kitchen in memory from what the store keeps: open tests from their facts, the rest from the read models.
import { decodeNames, type Kitchen, newKitchen, withMemory } from '../core/kitchen.ts';
import { foldLot } from '../core/lots.ts';
import { rememberSpeaker } from '../core/speakers.ts';
import { foldTest } from '../core/test.ts';
import type { KitchenId, Store, StoredKitchen } from './ports/store.ts';

export function restore(stored: StoredKitchen): Kitchen {
  const tests = stored.openTests.map((facts) => foldTest(facts));
  const lots = stored.lots.map((facts) => foldLot(facts));
  return {
    ...withMemory(newKitchen(stored.settings), new Map(stored.memory)),
    tests: new Map(tests.map((test) => [test.id, test])),
    nextTest: stored.lastTest + 1,
    lots: new Map(lots.map((lot) => [lot.id, lot])),
    nextLot: stored.lastLot + 1,
    pools: new Map(stored.pools),
    ...decodeNames(stored.names),
  };
}

/** How far back a speaker's facts are read: what can be taken back or corrected without reading the whole log. */
const FACTS_READ = 400;

/** The kitchen with a speaker's own last entries, and the tests that they are about. */
export async function withSpeaker(
  store: Store,
  id: KitchenId,
  at: { kitchen: Kitchen; speaker: string },
): Promise<Kitchen> {
  const facts = await store.speakerFacts(id, at.speaker, FACTS_READ);
  const speakers = rememberSpeaker(at.kitchen.speakers, at.speaker, facts);
  return withRecentTests(store, id, { ...at, kitchen: { ...at.kitchen, speakers } });
}

/** How many of the newest entries of a speaker must have their tests at hand. */
const TESTS_AT_HAND = 6;

/** Reads the closed tests that the speaker's newest entries are about, where they have left the memory. */
export async function withRecentTests(
  store: Store,
  id: KitchenId,
  { kitchen, speaker }: { kitchen: Kitchen; speaker: string },
): Promise<Kitchen> {
  const memory = kitchen.speakers.get(speaker);
  const recent =
    memory?.recent.slice(-TESTS_AT_HAND).flatMap(({ facts }) => facts.map(({ test }) => test)) ?? [];
  const wanted = new Set(
    [memory?.tests.at(-1), ...recent].filter((test) => test !== undefined && !kitchen.tests.has(test)),
  );
  if (wanted.size === 0) return kitchen;
  const tests = new Map(kitchen.tests);
  for (const test of wanted) {
    if (test === undefined) continue;
    const facts = await store.testFacts(id, test);
    if (facts.length > 0) tests.set(test, foldTest(facts));
  }
  return { ...kitchen, tests };
}

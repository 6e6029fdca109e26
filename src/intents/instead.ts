// An entry that stands in the place of an earlier one, which was meant for another part or another cut.
import { evolveAll } from '../core/kitchen.ts';
import type { Decision, NewFact, Scene } from './intent.ts';

/** Decides as if the earlier entry had never been said, and records that it is void before what takes its place. */
export function inPlaceOf(scene: Scene, target: string, decide: (without: Scene) => Decision): Decision {
  const away = voiding(scene, target);
  const decision = decide(withoutEntry(scene, target));
  return decision.is === 'recorded' ? { ...decision, facts: [...away, ...decision.facts] } : decision;
}

/** The scene as it would be without an entry. */
export function withoutEntry(scene: Scene, target: string): Scene {
  const { speaker, at } = scene;
  const facts = voiding(scene, target).map((each) => ({ ...each, entry: `without ${target}`, speaker, at }));
  return { ...scene, kitchen: evolveAll(scene.kitchen, facts) };
}

/** Each test that has a fact of the entry is told; where none has, the price book is. */
function voiding(scene: Scene, target: string): readonly NewFact[] {
  const fact = { type: 'undone', target, bare: false } as const;
  const tests = [...scene.kitchen.tests.values()].filter(({ facts }) =>
    facts.some(({ entry }) => entry === target),
  );
  return tests.length === 0 ? [{ fact }] : tests.map(({ id, item }) => ({ test: id, item, fact }));
}

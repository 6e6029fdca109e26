// "that was fat not trim", "no, striploin": the entry was about another part, or another cut.
import type { EntryOf } from '../core/entry.ts';
import type { Fact, TestId } from '../core/facts.ts';
import { openTests } from '../core/kitchen.ts';
import { name, say } from '../core/reply.ts';
import type { Test } from '../core/test.ts';
import { figuresOf, receivedLine } from './card.ts';
import { recordCorrection } from './correct-fact.ts';
import { type Correctable, newestWith, ownLast } from './correct-target.ts';
import { answered, type Decision, type NewFact, recorded, refused, type Scene } from './intent.ts';
import { renameTest } from './rename.ts';
import { openTestFor } from './route.ts';
import { respond as respondWeigh } from './weigh.ts';

type Correct = EntryOf<'correct'>;

/** What was weighed last, or under the old name, was the other part. */
export function anotherPart(scene: Scene, entry: Correct, newPart: string): Decision {
  const target = entry.part === undefined ? ownLast(scene) : weighedAs(scene, entry, entry.part);
  if (target?.fact.type === 'weighed' || target?.fact.type === 'credited') {
    if (target.fact.part === newPart) return answered(say('already-named', { item: name(newPart) }));
    return recordCorrection({ ...target, fact: { ...target.fact, part: newPart } });
  }
  return refused(entry.part === undefined ? say('nothing-to-correct') : say('not-weighed', { part: name(entry.part), item: name(openTestFor(scene, entry.item)?.item ?? '') }));
}

function weighedAs(scene: Scene, entry: Correct, part: string): Correctable | undefined {
  const test = openTestFor(scene, entry.item);
  return test && newestWith(test, 'weighed', part);
}

/** The piece that was just received is renamed; any other entry moves to the test of that item. */
export function anotherItem(scene: Scene, _entry: Correct, newItem: string): Decision {
  const last = scene.kitchen.speakers.get(scene.speaker)?.recent.at(-1);
  if (last === undefined) return refused(say('nothing-to-correct'));
  const target = ownLast(scene);
  const test = target?.test === undefined ? undefined : scene.kitchen.tests.get(target.test);
  if (target?.fact.type === 'received' && test !== undefined) return renameTest(test, newItem);
  if (target?.fact.type === 'priced' || target?.fact.type === 'readyCutPriced') return recordCorrection({ ...target, fact: { ...target.fact, item: newItem } });
  const other = openTests(scene.kitchen).findLast((each) => each.item === newItem);
  if (other === undefined) return refused(say('no-open-test', { item: name(newItem) }));
  if (other.id === test?.id) return answered(say('already-named', { item: name(newItem) }));
  const from = [...new Set(last.facts.map((each) => each.test))];
  return moveTo(other, last.entry, { facts: last.facts.map(({ fact }) => fact), from });
}

/** The entry is void where it was, and its facts stand in the other test. */
function moveTo(other: Test, target: string, { facts, from }: { facts: readonly Fact[]; from: readonly (TestId | undefined)[] }): Decision {
  const moved: NewFact[] = facts.flatMap((fact) => (fact.type === 'corrected' ? [fact.by] : fact.type === 'undone' ? [] : [fact])).map((fact) => ({ test: other.id, item: other.item, fact }));
  const away: NewFact[] = from.map((test) => ({ test, fact: { type: 'undone', target, bare: false } }));
  return recorded([...away, ...moved], (now) => {
    const test = now.kitchen.tests.get(other.id);
    if (test === undefined) return { say: [] };
    const weighed = facts.find((fact) => fact.type === 'weighed');
    const response = weighed === undefined ? { say: [receivedLine(test, figuresOf(now, test))] } : respondWeigh(now, test, { part: weighed.part });
    return { ...response, say: [say('moved-to', { item: name(other.item) }), ...response.say] };
  });
}

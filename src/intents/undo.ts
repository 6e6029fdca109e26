// "scratch that": takes back the speaker's own last entry that still stands.
import type { EntryOf } from '../core/entry.ts';
import type { Recorded, TestId } from '../core/facts.ts';
import { standingFacts } from '../core/test.ts';
import { list, name, say } from '../core/reply.ts';
import { figuresOf, ofTest, overweightAsk, toGo } from './card.ts';
import { confirm, type Decision, type Intent, type NewFact, recorded, refused, type Response, type Scene } from './intent.ts';
import { factWords } from './fact-words.ts';

export const undo: Intent<'undo'> = {
  slots: [],
  decide: (scene, entry) => {
    const last = scene.kitchen.speakers.get(scene.speaker)?.recent.at(-1);
    if (last === undefined) return refused(say('nothing-to-undo'));
    return othersWroteTo(scene, entry, last.facts) ?? takeBack(last.entry, last.facts);
  },
};

/** Taking back a piece on which other people have weighed would lose their entries too: asked once. */
function othersWroteTo(scene: Scene, entry: EntryOf<'undo'>, facts: readonly Recorded[]): Decision | undefined {
  const opened = facts.find(({ fact }) => fact.type === 'received');
  const test = opened?.test === undefined ? undefined : scene.kitchen.tests.get(opened.test);
  if (test === undefined || entry.sure === true) return undefined;
  const others = standingFacts(test.facts).filter(({ recorded: { speaker } }) => speaker !== scene.speaker);
  return others.length === 0 ? undefined : confirm(say('ask-undo-others', { item: name(test.item), count: others.length }), entry);
}

function takeBack(target: string, facts: readonly Recorded[]): Decision {
  const tests = [...new Set(facts.map((each) => each.test))];
  const undone: NewFact[] = tests.map((test) => ({ test, item: facts.find((each) => each.test === test)?.item, fact: { type: 'undone', target, bare: true } }));
  return recorded(undone, (now) => respond(now, facts, tests));
}

function respond(scene: Scene, facts: readonly Recorded[], tests: readonly (TestId | undefined)[]): Response {
  const took = say('took-back', { what: list(facts.flatMap(factWords)) });
  const test = tests.map((id) => (id === undefined ? undefined : scene.kitchen.tests.get(id))).find((each) => each !== undefined);
  if (test === undefined) return { say: [took] };
  if (test.status === 'dropped') return { say: [took, say('test-gone', { item: name(test.item) })] };
  const reopened = facts.some(({ fact }) => fact.type === 'closed') ? [say('open-again', { item: name(test.item) })] : [];
  return { say: [took, ...reopened, ofTest(scene, test, toGo(figuresOf(scene, test)))], ask: overweightAsk(scene, test) };
}

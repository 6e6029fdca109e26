// "scratch that": takes back the speaker's own last entry that still stands.
import type { EntryOf } from '../core/entry.ts';
import type { Recorded, TestId } from '../core/facts.ts';
import type { RecentEntry } from '../core/speakers.ts';
import { aloudTo } from '../core/heard-out.ts';
import { standingFacts, type Test, undoneEntries } from '../core/test.ts';
import { list, name, type Reply, say, weight } from '../core/reply.ts';
import { figuresOf, ofTest, overweightAsk, toGo } from './card.ts';
import {
  aboutOf,
  confirm,
  type Decision,
  type Intent,
  type NewFact,
  recorded,
  refused,
  type Response,
  type Scene,
} from './intent.ts';
import { factWords } from './fact-words.ts';
import { settingNow } from './setting.ts';

export const undo: Intent<'undo'> = {
  slots: [],
  decide: (scene, entry) => {
    const recent = scene.kitchen.speakers.get(scene.speaker)?.recent ?? [];
    const { target } = entry;
    const last = recent.findLast(
      (each) => (target === undefined || each.entry === target) && stands(scene, each),
    );
    if (last === undefined) return refused(say('nothing-to-undo'));
    return othersWroteTo(scene, entry, last.facts) ?? takeBack(scene, last);
  },
};

/** Whether an entry still stands: another one may have taken its place (the weight was of another part). */
function stands(scene: Scene, { entry, facts }: RecentEntry): boolean {
  return facts.some(({ test, lot, fact }) => {
    const about = aboutOf(scene, { test, lot });
    if (about === undefined) return true;
    const undone = undoneEntries(about.facts);
    return !undone.has(entry) && !(fact.type === 'corrected' && undone.has(fact.target));
  });
}

/** Taking back a piece on which other people have weighed would lose their entries too: asked once. */
function othersWroteTo(
  scene: Scene,
  entry: EntryOf<'undo'>,
  facts: readonly Recorded[],
): Decision | undefined {
  const opened = facts.find(({ fact }) => fact.type === 'received' || fact.type === 'ground');
  const about = opened && aboutOf(scene, opened);
  if (opened === undefined || about === undefined || entry.sure === true) return undefined;
  const others = standingFacts(about.facts).filter(({ recorded: { speaker } }) => speaker !== scene.speaker);
  if (others.length === 0) return undefined;
  const what =
    opened.lot === undefined
      ? say('item', { item: name(opened.item ?? '') })
      : say('grind-number', { lot: opened.lot });
  return confirm(say('ask-undo-others', { item: list([what]), count: others.length }), entry);
}

function takeBack(scene: Scene, { entry: target, facts }: RecentEntry): Decision {
  const tests = [...new Set(facts.map((each) => each.test))];
  const undone: NewFact[] = tests.map((test) => ({
    test,
    lot: facts.find((each) => each.test === test)?.lot,
    item: facts.find((each) => each.test === test)?.item,
    fact: { type: 'undone', target, bare: true },
  }));
  // An end piece stands for all that was made of it.
  const ended = facts.filter(({ fact }) => fact.type === 'ended');
  const words = list(
    (ended.length > 0 ? ended : facts).flatMap((each) => factWords(asItStands(scene, each))),
  );
  return recorded(undone, (now) => respond(now, { facts, tests, words }));
}

/** The fact with what others have corrected in it since. */
function asItStands(scene: Scene, recorded: Recorded): Pick<Recorded, 'fact' | 'item'> {
  const about = aboutOf(scene, recorded);
  const fact = about && standingFacts(about.facts).find((each) => isSameFact(each.recorded, recorded))?.fact;
  return { item: recorded.item, fact: fact ?? recorded.fact };
}

const isSameFact = (one: Recorded, other: Recorded): boolean =>
  one.entry === other.entry && one.fact.type === other.fact.type;

interface Took {
  readonly facts: readonly Recorded[];
  readonly tests: readonly (TestId | undefined)[];
  readonly words: ReturnType<typeof list>;
}

function respond(scene: Scene, { facts, tests, words }: Took): Response {
  const took = say('took-back', { what: words });
  const found = tests.flatMap((id) => (id === undefined ? [] : (scene.kitchen.tests.get(id) ?? [])));
  const [test] = found;
  const settings = facts.flatMap(({ fact }) =>
    fact.type === 'chosen' ? [settingNow(scene.kitchen, fact.setting)] : [],
  );
  const isOfVoice = facts.some(({ fact }) => fact.type === 'voiceChosen');
  const aloud = isOfVoice ? [say('aloud-again', { when: aloudTo(scene.kitchen.memory, scene.speaker) })] : [];
  if (test === undefined) return { say: [took, ...settings, ...aloud] };
  if (test.status === 'dropped') return { say: [took, say('test-gone', { item: name(test.item) })] };
  const reopened = facts.some(({ fact }) => fact.type === 'closed')
    ? [say('open-again', { item: name(test.item) })]
    : [];
  const lines = found.map((each) =>
    ofTest(scene, each, ...leaves(each, facts), toGo(figuresOf(scene, each))),
  );
  return { say: [took, ...reopened, ...lines], ask: overweightAsk(scene, test) };
}

function leaves(test: Test, taken: readonly Recorded[]): readonly Reply[] {
  const restored = restoredBy(test, taken);
  return restored.length === 0 ? [] : [say('that-leaves', { what: list(restored) })];
}

/** What was put aside by a correction, by an entry in the place of another, or by a weight in the place of a former one. */
function restoredBy(test: Test, taken: readonly Recorded[]): readonly Reply[] {
  const aside = taken.flatMap(({ fact }) =>
    fact.type === 'corrected' || fact.type === 'undone' ? [fact.target] : [],
  );
  const facts = standingFacts(test.facts).filter(({ recorded }) => aside.includes(recorded.entry));
  const weighed = taken.flatMap(({ fact }) => (fact.type === 'weighed' ? [fact.part] : []));
  const parts = aside.length > 0 ? [] : test.parts.filter(({ part }) => weighed.includes(part));
  return [
    ...facts.flatMap(({ recorded: { item }, fact }) => factWords({ item, fact })),
    ...parts.map(({ part, grams }) => say('part-weight', { part: name(part), weight: weight(grams) })),
  ];
}

// An earlier message said anew. Where it says the same things in other figures, each holds in the place of the old one;
// else the old entries are void and the new ones stand. What is not plainly understood leaves everything as it was.
import type { Recorded } from '../core/facts.ts';
import { evolveAll } from '../core/kitchen.ts';
import { say } from '../core/reply.ts';
import { standingFacts } from '../core/test.ts';
import { withoutEntry } from '../intents/instead.ts';
import type { Scene } from '../intents/intent.ts';
import { converse, type Conversation, type Heeded } from './converse.ts';
import type { Understood } from './understand.ts';

interface Edit extends Conversation {
  /** The message that is said anew. */
  readonly replaces: string;
}

export function heedEdit(edit: Edit, understood: readonly Understood[]): Heeded {
  const old = entriesOf(edit);
  if (old.length === 0) return refuse(edit, 'edit-nothing');
  const facts = old.flatMap((entry) => standing(edit.scene, entry));
  const { kitchen } = edit.scene;
  if (facts.some(({ test }) => test !== undefined && kitchen.tests.get(test)?.status !== 'open'))
    return refuse(edit, 'edit-closed');
  const without = old.reduce(withoutEntry, edit.scene);
  const heeded = converse({ scene: without, question: undefined, message: edit.message }, understood);
  if (heeded.outcome !== 'recorded') return refuse(edit, 'edit-unclear');
  const put = corrections(facts, heeded.facts) ?? inPlace(edit, old, heeded.facts);
  if (put === undefined) return refuse(edit, 'edit-unclear');
  return {
    ...heeded,
    kitchen: evolveAll(kitchen, put),
    facts: put,
    question: edit.question,
    outcome: put.length === 0 ? 'answered' : 'recorded',
    say: [say('edited'), ...heeded.say],
  };
}

const refuse = ({ scene, question }: Edit, id: string): Heeded => ({
  kitchen: scene.kitchen,
  question,
  facts: [],
  entries: [],
  outcome: 'refused',
  say: [say(id)],
  asked: undefined,
});

/** The entries that the message made, or an edit of it before, and that nobody took back. */
function entriesOf({ scene, replaces }: Edit): readonly string[] {
  const recent = scene.kitchen.speakers.get(scene.speaker)?.recent ?? [];
  return recent
    .map(({ entry }) => entry)
    .filter((entry) => entry.startsWith(`${replaces}.`) || entry.startsWith(`${replaces}@`));
}

/** What of an entry holds now, as it holds; a correction has made its own of what it corrected. */
function standing({ kitchen, speaker }: Scene, entry: string): readonly Recorded[] {
  const recent = kitchen.speakers.get(speaker)?.recent ?? [];
  const facts = recent.find((each) => each.entry === entry)?.facts ?? [];
  return facts.flatMap((recorded) => {
    if (recorded.fact.type === 'corrected' || recorded.fact.type === 'undone') return [];
    const test = recorded.test === undefined ? undefined : kitchen.tests.get(recorded.test);
    if (test === undefined) return [recorded];
    return standingFacts(test.facts)
      .filter((each) => each.recorded.entry === entry && each.fact.type === recorded.fact.type)
      .map(({ fact }) => ({ ...recorded, fact }));
  });
}

/** The same facts, one for one, with what they say now; undefined where they are others. */
function corrections(old: readonly Recorded[], fresh: readonly Recorded[]): readonly Recorded[] | undefined {
  if (old.length !== fresh.length) return undefined;
  const put: Recorded[] = [];
  for (const [at, before] of old.entries()) {
    const after = fresh[at];
    if (after === undefined || !isOfOneKind(before, after)) return undefined;
    if (JSON.stringify(before.fact) === JSON.stringify(after.fact)) continue;
    const { entry: target, test } = before;
    if (after.fact.type === 'corrected') return undefined;
    const { entry, speaker, at: when, item } = after;
    put.push({
      ...{ entry, speaker, at: when, fact: { type: 'corrected', target, by: after.fact } },
      ...(test === undefined ? {} : { test }),
      ...(item === undefined ? {} : { item }),
    });
  }
  return put;
}

/** A piece that is said anew would be another test; it is the same one. */
const isOfOneKind = (before: Recorded, after: Recorded): boolean =>
  before.fact.type === after.fact.type && (before.fact.type === 'received' || before.test === after.test);

/** Others in the place of the old ones. A piece stays: what was weighed of it would be lost. */
function inPlace(
  { scene, message }: Edit,
  old: readonly string[],
  fresh: readonly Recorded[],
): readonly Recorded[] | undefined {
  const { kitchen, speaker, at } = scene;
  const entry = `${message}.0`;
  const away = old.flatMap((target): readonly Recorded[] => {
    const fact = { type: 'undone', target, bare: false } as const;
    const tests = [...kitchen.tests.values()].filter(({ facts }) =>
      facts.some((each) => each.entry === target),
    );
    if (tests.length === 0) return [{ entry, speaker, at, fact }];
    return tests.map(({ id, item }) => ({ entry, speaker, at, test: id, item, fact }));
  });
  const opened = [...kitchen.tests.values()].some(({ facts }) =>
    facts.some((each) => old.includes(each.entry) && each.fact.type === 'received'),
  );
  return opened ? undefined : [...away, ...fresh];
}

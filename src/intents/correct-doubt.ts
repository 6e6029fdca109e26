// What is asked before a correction is recorded: the same questions that the entry itself would have met.
import { decimal } from '../core/decimal.ts';
import type { Entry, EntryOf } from '../core/entry.ts';
import type { FactOf, PlainFact } from '../core/facts.ts';
import { OVERWEIGHT_TOLERANCE } from '../core/figures.ts';
import { fitsStage } from '../core/heat.ts';
import { list, name, percent, say, temperature, weight } from '../core/reply.ts';
import type { Test } from '../core/test.ts';
import { askedOf } from './card.ts';
import { cookedDoubt } from './cooked.ts';
import type { Correctable } from './correct-target.ts';
import { asks, confirm, type Decision, lacking, type Scene } from './intent.ts';
import { besideList } from './portions-list.ts';
import { whatWords } from './reading.ts';
import { far } from './receive.ts';

type Correct = EntryOf<'correct'>;

const HALF = decimal('0.5');

interface Change {
  readonly after: Correctable;
  readonly before: PlainFact;
}

function implausible(
  scene: Scene,
  entry: Correct,
  { after: { fact, test: id }, before }: Change,
): Decision | undefined {
  const wants = lacking(entry, 'weight');
  if (fact.type === 'temperatureRead') return rawOrCookedOtherwise(entry, fact);
  if (fact.type === 'received') {
    const { item, grams, pieces } = fact;
    const doubt =
      entry.weight && far(scene, { kind: 'receive', item, weight: grams, pieces, sure: entry.sure }, item);
    return doubt?.is === 'asked' ? confirm(doubt.ask.asked, entry, wants) : undefined;
  }
  const test = id === undefined ? undefined : scene.kitchen.tests.get(id);
  if (isCooked(fact) && test !== undefined) return cookedOtherwise(scene, test, { entry, fact });
  if (fact.type !== 'weighed' || before.type !== 'weighed' || test === undefined) return undefined;
  const { grams: received } = test.received;
  const total = test.parts.find(({ part }) => part === fact.part)?.grams ?? before.grams;
  const grams = fact.mode === 'add' ? total.minus(before.grams).plus(fact.grams) : fact.grams;
  const share = percent(grams.div(received).times(100));
  const args = {
    part: name(fact.part),
    weight: weight(grams),
    received: weight(received),
    share,
    meant: weight(fact.grams.div(10)),
  };
  if (grams.gt(received.plus(OVERWEIGHT_TOLERANCE)))
    return asks(askedOf(scene, test, say('ask-heavier-than-piece', args)), { wants });
  if (!grams.gt(received.times(HALF)) || entry.sure === true || entry.weight === undefined) return undefined;
  return confirm(askedOf(scene, test, say('ask-over-half', args)), entry, wants);
}

/** Meat in the cold that is put right to what only a pan reaches is another reading, or was no raw meat. */
function rawOrCookedOtherwise(entry: Correct, fact: FactOf<'temperatureRead'>): Decision | undefined {
  const { stage, degreesF: degrees, what, food } = fact;
  if ((stage !== 'raw' && stage !== 'cook') || entry.sure === true || fitsStage(stage, degrees))
    return undefined;
  const other = stage === 'raw' ? 'cook' : 'raw';
  const anew: Entry = { kind: 'temperature', degrees, what, food, stage: other };
  const same: Entry = { ...entry, degrees, number: undefined, sure: true };
  const args = { what: list([whatWords(fact)]), degrees: temperature(degrees) };
  return asks(say('ask-raw-or-cooking', args), {
    choices: stage === 'raw' ? { raw: same, cooking: anew } : { raw: anew, cooking: same },
  });
}

/** Asked as the cooked weight itself would be, and answered with a correction. */
function cookedOtherwise(
  scene: Scene,
  test: Test,
  { entry, fact }: { entry: Correct; fact: FactOf<'cooked'> | FactOf<'served'> },
): Decision | undefined {
  const doubt = cookedDoubt(scene, test, { kind: fact.type, weight: fact.grams, sure: entry.sure });
  if (doubt?.is !== 'asked') return undefined;
  const wants = lacking(entry, 'weight');
  return 'yes' in doubt.ask.choices
    ? confirm(doubt.ask.asked, entry, wants)
    : asks(doubt.ask.asked, { wants });
}

/** A count below the length of the list is asked about, as where it is said for the first time. */
function shorterThanList(
  scene: Scene,
  { count, each }: Correct,
  { fact, test: id }: Correctable,
): Decision | undefined {
  const test = id === undefined ? undefined : scene.kitchen.tests.get(id);
  if (fact.type !== 'portioned' || count === undefined || test === undefined) return undefined;
  return besideList(scene, test, { kind: 'portions', count, each, test: test.id });
}

export const isCooked = (fact: PlainFact): fact is FactOf<'cooked'> | FactOf<'served'> =>
  fact.type === 'cooked' || fact.type === 'served';

/** The one question that a correction raises, if any. */
export const correctDoubt = (scene: Scene, entry: Correct, change: Change): Decision | undefined =>
  implausible(scene, entry, change) ?? shorterThanList(scene, entry, change.after);

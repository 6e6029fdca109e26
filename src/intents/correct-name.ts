// "that was fat not trim", "no, striploin": the entry was about another part, or another cut.
import type { Entry, EntryOf } from '../core/entry.ts';
import type { FactOf, Recorded } from '../core/facts.ts';
import { creditOf, tareOf } from '../core/kitchen.ts';
import { name, say } from '../core/reply.ts';
import { saidBy } from '../core/speakers.ts';
import { recordCorrection } from './correct-fact.ts';
import { type Correctable, newestWith, ownLast } from './correct-target.ts';
import { withoutEntry } from './instead.ts';
import { answered, becomes, type Becomes, type Decision, refused, type Scene } from './intent.ts';
import { renameTest } from './rename.ts';
import { openTestFor } from './route.ts';

type Correct = EntryOf<'correct'>;

/** What was weighed last, or under the old name, was the other part. */
export function anotherPart(scene: Scene, entry: Correct, newPart: string): Decision | Becomes {
  const target = entry.part === undefined ? ownLast(scene) : weighedAs(scene, entry, entry.part);
  const fact = target?.fact;
  if (target === undefined || (fact?.type !== 'weighed' && fact?.type !== 'credited'))
    return noSuch(scene, entry);
  if (fact.part === newPart) return answered(say('already-named', { item: name(newPart) }));
  const isOpen = target.test !== undefined && scene.kitchen.tests.get(target.test)?.status === 'open';
  const isOfMore = factsOf(scene, target.target).some((each) => each.type === 'ended');
  if (fact.type === 'credited' || !isOpen || isOfMore)
    return recordCorrection({ ...target, fact: { ...fact, part: newPart } });
  return becomes({
    ...weighEntry(scene, target, fact),
    part: newPart,
    test: target.test,
    instead: target.target,
  });
}

function noSuch(scene: Scene, { part, item }: Correct): Decision {
  if (part === undefined) return refused(say('nothing-to-correct'));
  const test = openTestFor(scene, item);
  return refused(
    test === undefined
      ? say('nothing-open')
      : say('not-weighed', { part: name(part), item: name(test.item) }),
  );
}

function weighedAs(scene: Scene, entry: Correct, part: string): Correctable | undefined {
  const test = openTestFor(scene, entry.item);
  return test && newestWith(test, 'weighed', part);
}

/**
 * The piece that was just received is renamed, or the one that is named where no test of the new item is open; any other
 * entry moves to the test of that item.
 */
export function anotherItem(scene: Scene, newItem: string, item?: string): Decision | Becomes {
  const named = item === undefined ? undefined : openTestFor(scene, item);
  if (item !== undefined && named === undefined) return refused(say('no-open-test', { item: name(item) }));
  if (named !== undefined && openTestFor(scene, newItem) === undefined) return renameTest(named, newItem);
  const target = ownLast(scene) ?? otherLast(scene);
  if (target === undefined) return refused(say('nothing-to-correct'));
  const test = target.test === undefined ? undefined : scene.kitchen.tests.get(target.test);
  if (target.fact.type === 'received')
    return test === undefined ? { is: 'ignored' } : renameTest(test, newItem);
  const instead = target.target;
  const entry = entryOf(scene, target);
  if (entry === undefined) return refused(say('nothing-to-correct'));
  if (entry.kind === 'price' || entry.kind === 'readyCut')
    return becomes({ ...entry, item: newItem, instead });
  const other = openTestFor(scene, newItem);
  if (other === undefined) return refused(say('no-open-test', { item: name(newItem) }));
  if (other.id === test?.id) return answered(say('already-named', { item: name(newItem) }));
  return becomes({ ...entry, test: other.id, instead });
}

/** An entry without a quantity (a list, a removal) moves too. */
function otherLast(scene: Scene): Correctable | undefined {
  const last = saidBy(scene.kitchen.speakers, scene.speaker).at(-1)?.facts.at(-1);
  if (last === undefined || last.fact.type === 'corrected') return undefined;
  return { target: last.entry, fact: last.fact, test: last.test, item: last.item, saidIn: last.entry };
}

/** The entry that would make the fact anew. */
function entryOf(scene: Scene, target: Correctable): Entry | undefined {
  const { fact } = target;
  switch (fact.type) {
    case 'weighed':
      return weighEntry(scene, target, fact);
    case 'portioned':
      return {
        kind: 'portions',
        count: fact.count,
        each: fact.eachGrams,
        weight: fact.grams,
        ...(fact.mode === 'add' ? { mode: 'add' } : {}),
      };
    case 'listed':
      return { kind: 'portionWeights', eachList: fact.eachGrams };
    case 'credited':
      return { kind: 'credit', part: fact.part, credit: fact.perLb };
    case 'labored':
      return { kind: 'labor', minutes: fact.minutes, rate: fact.ratePerHour };
    case 'packed':
      return { kind: 'packing', costEach: fact.costEach };
    case 'removed':
      return { kind: 'remove', part: fact.part };
    case 'ended':
      return { kind: 'endPiece', each: fact.grams, rest: fact.rest };
    case 'cooked':
    case 'served':
      return { kind: fact.type, weight: fact.grams };
    case 'priced':
      return { kind: 'price', item: fact.item, price: fact.perLb };
    case 'readyCutPriced':
      return fact.each === undefined
        ? { kind: 'readyCut', item: fact.item, price: fact.perLb }
        : { kind: 'readyCut', item: fact.item, priceEach: fact.each, each: fact.eachGrams };
    case 'ground':
    case 'sourced':
    case 'carriedOver':
    case 'cleaned':
    case 'batchBegun':
    case 'temperatureRead':
    case 'thermometerChecked':
    case 'coolingBegun':
    case 'lotEnded':
    case 'batchEnded':
    case 'binned':
    case 'received':
    case 'sold':
    case 'tared':
    case 'noted':
    case 'turned':
    case 'reminderSet':
    case 'reminderCancelled':
    case 'fired':
    case 'acknowledged':
    case 'chosen':
    case 'voiceChosen':
    case 'closed':
    case 'dropped':
    case 'undone':
      return undefined;
  }
}

/** With the container that was learnt by it; a credit that came in by itself stays behind. */
function weighEntry(scene: Scene, { target, item }: Correctable, fact: FactOf<'weighed'>): EntryOf<'weigh'> {
  const known = item && creditOf(withoutEntry(scene, target).kitchen, item, fact.part);
  const credit = known && fact.creditPerLb?.eq(known) === true ? undefined : fact.creditPerLb;
  const { part, mode, grams } = fact;
  const facts = factsOf(scene, target);
  const sold = facts.some((each) => each.type === 'sold') ? { sold: true } : {};
  const entry = {
    kind: 'weigh',
    part,
    mode,
    credit,
    ...(mode === 'add' ? { told: true } : {}),
    ...sold,
  } as const;
  const tared = facts.find((each): each is FactOf<'tared'> => each.type === 'tared');
  if (tared === undefined) return { ...entry, ...shownOf(scene, fact) };
  return { ...entry, weight: grams.plus(tared.grams), container: tared.container, tare: tared.grams };
}

/** What the scale showed, with the container that is known to weigh the same. */
function shownOf(
  { kitchen }: Scene,
  { grams, container, tareGrams }: FactOf<'weighed'>,
): Pick<EntryOf<'weigh'>, 'weight' | 'container'> {
  const known = container === undefined ? undefined : tareOf(kitchen, container);
  return container !== undefined && tareGrams !== undefined && known?.eq(tareGrams) === true
    ? { weight: grams.plus(tareGrams), container }
    : { weight: grams };
}

/** All facts of an entry of the speaker. */
function factsOf(scene: Scene, target: string): readonly Recorded['fact'][] {
  const recent = scene.kitchen.speakers.get(scene.speaker)?.recent ?? [];
  return (recent.find(({ entry }) => entry === target)?.facts ?? []).map(({ fact }) => fact);
}

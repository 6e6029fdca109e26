// "no, 1.3", "make the trim 1.3", "no, striploin", "that was fat not trim": an entry was otherwise than said.
import type { EntryOf } from '../core/entry.ts';
import { openTests } from '../core/kitchen.ts';
import { name, say } from '../core/reply.ts';
import type { Test } from '../core/test.ts';
import { applyCorrection } from './correct-fact.ts';
import { anotherItem, anotherPart } from './correct-name.ts';
import { type Correctable, lastOf, newestWith, ownLast } from './correct-target.ts';
import { asks, type Decision, type Intent, refused, type Scene, showing } from './intent.ts';
import { openTestFor, withTest } from './route.ts';
import { weigh } from './weigh.ts';
import { credit } from './credit.ts';

type Correct = EntryOf<'correct'>;

export const correct: Intent<'correct'> = {
  slots: [
    'part', 'item', 'weight', 'price', 'cost', 'credit', 'priceEach', 'count', 'each', 'pieces', 'minutes', 'rate', 'costEach',
    'newItem', 'newPart', 'number', 'old',
  ], // prettier-ignore
  decide: (scene, entry) => {
    if (entry.newPart !== undefined) return anotherPart(scene, entry, entry.newPart);
    if (entry.newItem !== undefined) return anotherItem(scene, entry, entry.newItem);
    if (entry.part !== undefined) return ofPart(scene, entry, entry.part);
    if (entry.item !== undefined) return ofPiece(scene, entry, entry.item);
    if (entry.number !== undefined) return bareNumber(scene, entry);
    return ofField(scene, entry);
  },
};

/** "make the trim 1.3": what the part is in all. */
function ofPart(scene: Scene, entry: Correct, part: string): Decision {
  const { item, weight, credit: perLb, sure } = entry;
  if (weight !== undefined) return weigh.decide(scene, { kind: 'weigh', part, weight, mode: 'set', told: true, item, sure });
  if (perLb !== undefined) return credit.decide(scene, { kind: 'credit', part, credit: perLb, item });
  return { is: 'ignored' };
}

/** "make the ribeye 14.6 lb": what was received. */
function ofPiece(scene: Scene, entry: Correct, item: string): Decision {
  const test = openTests(scene.kitchen).findLast((each) => each.item === item);
  const target = test === undefined ? undefined : newestWith(test, 'received');
  return target === undefined ? refused(say('no-open-test', { item: name(item) })) : applyCorrection(scene, entry, target);
}

/** "no, 1.3": the only quantity of the speaker's last entry; of several it is asked which. */
function bareNumber(scene: Scene, entry: Correct): Decision {
  const target = ownLast(scene);
  if (target === undefined) return refused(say('nothing-to-correct'));
  const readings = readingsFor(target, entry);
  const [only, other] = readings;
  if (only === undefined) return refused(say('nothing-to-correct'));
  if (other === undefined) return showing(applyCorrection(scene, only.entry, target), only.entry);
  const choices = Object.fromEntries(readings.map((reading) => [reading.choice, reading.entry]));
  return asks(say('ask-correct-which', { fields: readings.map(({ choice }) => choice).sort().join('-') }), { choices });
}

interface Reading {
  readonly choice: string;
  readonly entry: Correct;
}

/** What the number can be of the quantities that the fact has. */
function readingsFor({ fact }: Correctable, { number, ...entry }: Correct): readonly Reading[] {
  const { weight, price, money, count, each, minutes } = number ?? {};
  const all: Record<string, Reading | undefined> = {
    weight: weight && { choice: 'weight', entry: { ...entry, weight } },
    price: price && { choice: 'newPrice', entry: { ...entry, price } },
    cost: money && { choice: 'total', entry: { ...entry, cost: money } },
    credit: price && { choice: 'worth', entry: { ...entry, credit: price } },
    priceEach: money && { choice: 'each', entry: { ...entry, priceEach: money } },
    count: count === undefined ? undefined : { choice: 'count', entry: { ...entry, count } },
    each: each && { choice: 'size', entry: { ...entry, each } },
    minutes: minutes && { choice: 'minutes', entry: { ...entry, minutes } },
    rate: money && { choice: 'rate', entry: { ...entry, rate: money } },
    costEach: money && { choice: 'each', entry: { ...entry, costEach: money } },
  };
  return fieldsOf(fact).flatMap((field) => all[field] ?? []);
}

function fieldsOf(fact: Correctable['fact']): readonly string[] {
  const said = (pairs: readonly (readonly [string, unknown])[]): readonly string[] => pairs.flatMap(([field, value]) => (value === undefined ? [] : [field]));
  switch (fact.type) {
    case 'received':
      return said([['weight', fact.grams], ['price', fact.perLb], ['cost', fact.cost]]); // prettier-ignore
    case 'weighed':
      return said([['weight', fact.grams], ['credit', fact.creditPerLb]]); // prettier-ignore
    case 'portioned':
      return said([['count', fact.count], ['each', fact.eachGrams], ['weight', fact.grams]]); // prettier-ignore
    case 'priced':
      return ['price'];
    case 'readyCutPriced':
      return fact.each === undefined ? ['price'] : ['priceEach'];
    case 'credited':
      return ['credit'];
    case 'labored':
      return fact.minutes === undefined ? ['rate'] : ['minutes'];
    case 'packed':
      return ['costEach'];
    case 'tared':
      return ['weight'];
    default:
      return [];
  }
}

/** "no, 11 portions", "no, 7.60 a pound": the field tells which entry is meant, the speaker's last one first. */
function ofField(scene: Scene, entry: Correct): Decision {
  const last = lastOf(scene, entry);
  if (last !== undefined) return applyCorrection(scene, entry, last);
  if (openTestFor(scene, undefined) === undefined) return refused(say('nothing-to-correct'));
  return withTest(scene, entry, (test) => inTest(scene, entry, test));
}

function inTest(scene: Scene, entry: Correct, test: Test): Decision {
  const { count, each, price, cost, pieces, minutes, rate, costEach } = entry;
  const type =
    count !== undefined || each !== undefined ? 'portioned'
    : price !== undefined || cost !== undefined || pieces !== undefined ? 'received'
    : minutes !== undefined || rate !== undefined ? 'labored'
    : costEach !== undefined ? 'packed'
    : undefined; // prettier-ignore
  const target = type && newestWith(test, type);
  return target === undefined ? refused(say('nothing-to-correct')) : applyCorrection(scene, entry, target);
}

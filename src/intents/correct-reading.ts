// What a bare number after "no" corrects: the only quantity that the last entry said, or one of several.
import type { BareNumber, EntryOf } from '../core/entry.ts';
import type { PlainFact } from '../core/facts.ts';
import { creditOf, laborRateOf } from '../core/kitchen.ts';
import { isDecimal } from '../core/decimal.ts';
import { measuredAs } from '../core/measured-as.ts';
import { standingFacts } from '../core/test.ts';
import { withoutEntry } from './instead.ts';
import { type Correctable, type Field, ownEntries } from './correct-target.ts';
import type { Scene } from './intent.ts';

type Correct = EntryOf<'correct'>;

/** A way in which the number can be meant, and the word that chooses it. */
export interface Way {
  readonly choice: string;
  readonly entry: Correct;
}

export function waysOf(
  scene: Scene,
  target: Correctable,
  { number = {}, ...entry }: Correct,
): readonly Way[] {
  const ways = (fields: readonly Field[]): readonly Way[] =>
    fields.flatMap((field) => {
      const value = measuredAs(number, field);
      return value === undefined ? [] : [{ choice: WORDS[field], entry: { ...entry, [field]: value } }];
    });
  const said = ways(saidIn(scene, target));
  // With a unit it may be what the last correction left as it was.
  return said.length > 0 ? said : ways(valuesOf(target.fact).map(([field]) => field));
}

/** Which of the speaker's last entries say so much, the newest first, and in which of their quantities. */
export const ownWith = (
  scene: Scene,
  number: BareNumber,
): readonly { readonly target: Correctable; readonly field: Field }[] =>
  ownEntries(scene).flatMap((target, at, all) =>
    all.findIndex((each) => each.target === target.target && each.fact.type === target.fact.type) < at
      ? []
      : valuesOf(target.fact).flatMap(([field, value]) =>
          isSame(value, measuredAs(number, field)) ? [{ target, field }] : [],
        ),
  );

/** The word that chooses a quantity. */
export const choiceOf = (field: Field): string => WORDS[field];

const isSame = (one: unknown, other: unknown): boolean =>
  isDecimal(one) && isDecimal(other) ? one.eq(other) : one === other;

const WORDS: Readonly<Record<Field, string>> = {
  weight: 'weight',
  price: 'newPrice',
  cost: 'total',
  credit: 'worth',
  priceEach: 'each',
  count: 'count',
  each: 'size',
  pieces: 'pieces',
  minutes: 'minutes',
  rate: 'rate',
  costEach: 'each',
  degrees: 'degrees',
};

/** The quantities that the last entry said. Of a correction those that it changed; what was filled in by itself is not said. */
function saidIn(scene: Scene, target: Correctable): readonly Field[] {
  const without = withoutEntry(scene, target.saidIn);
  const values = valuesOf(target.fact);
  if (target.saidIn === target.target)
    return values.flatMap(([field]) => (isFilledIn(without, target, field) ? [] : [field]));
  const before = new Map(
    valuesOf(asItWas(without, target) ?? target.fact).map(([field, value]) => [field, String(value)]),
  );
  const changed = values
    .filter(([field, value]) => before.get(field) !== String(value))
    .map(([field]) => field);
  return changed.length === 0 ? values.map(([field]) => field) : changed;
}

function asItWas({ kitchen }: Scene, { target, fact, test: id }: Correctable): PlainFact | undefined {
  const test = id === undefined ? undefined : kitchen.tests.get(id);
  return (
    test &&
    standingFacts(test.facts).find((each) => each.recorded.entry === target && each.fact.type === fact.type)
      ?.fact
  );
}

/** The default credit of a part, and the rate known before, come into an entry that did not say them. */
function isFilledIn({ kitchen, at }: Scene, { fact, item, test: id }: Correctable, field: Field): boolean {
  if (fact.type === 'weighed' && field === 'credit')
    return item !== undefined && creditOf(kitchen, item, fact.part)?.eq(fact.creditPerLb ?? -1) === true;
  if (fact.type !== 'labored' || field !== 'rate' || fact.minutes === undefined) return false;
  const known =
    (id === undefined ? undefined : kitchen.tests.get(id)?.labor.ratePerHour) ?? laborRateOf(kitchen, at);
  return known?.eq(fact.ratePerHour ?? -1) === true;
}

function valuesOf(fact: PlainFact): readonly (readonly [Field, unknown])[] {
  const all: readonly (readonly [Field, unknown])[] = fieldValues(fact);
  return all.filter(([, value]) => value !== undefined);
}

function fieldValues(fact: PlainFact): readonly (readonly [Field, unknown])[] {
  switch (fact.type) {
    case 'received':
      return [['weight', fact.grams], ['price', fact.perLb], ['cost', fact.cost]]; // prettier-ignore
    case 'weighed':
      return [['weight', fact.grams], ['credit', fact.creditPerLb]]; // prettier-ignore
    case 'portioned':
      return [['count', fact.count], ['each', fact.eachGrams], ['weight', fact.grams]]; // prettier-ignore
    case 'priced':
      return [['price', fact.perLb]];
    case 'readyCutPriced':
      return fact.each === undefined ? [['price', fact.perLb]] : [['priceEach', fact.each]];
    case 'credited':
      return [['credit', fact.perLb]];
    case 'labored':
      return [['minutes', fact.minutes], ['rate', fact.ratePerHour]]; // prettier-ignore
    case 'packed':
      return [['costEach', fact.costEach]];
    case 'ended':
      return [['each', fact.grams]];
    case 'tared':
    case 'ground':
    case 'cooked':
    case 'served':
      return [['weight', fact.grams]];
    case 'temperatureRead':
    case 'thermometerChecked':
      return [['degrees', fact.degreesF]];
    case 'listed':
    case 'sourced':
    case 'carriedOver':
    case 'cleaned':
    case 'batchBegun':
    case 'coolingBegun':
    case 'lotEnded':
    case 'batchEnded':
    case 'binned':
    case 'sold':
    case 'removed':
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
      return [];
  }
}

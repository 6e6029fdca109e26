// A fact with the fields that a correction says.
import type { EntryOf } from '../core/entry.ts';
import type { FactOf, PlainFact } from '../core/facts.ts';
import { perLbOf } from '../core/money.ts';
import type { Grams } from '../core/quantity.ts';
import type { Scene } from './intent.ts';
import { judgedAnew } from './reading.ts';

type Correct = EntryOf<'correct'>;

/** The fact with the said fields; undefined where it has none of them. */
export function changedFact(scene: Scene, fact: PlainFact, entry: Correct): PlainFact | undefined {
  const {
    weight: grams,
    price,
    cost,
    pieces,
    credit,
    count,
    each,
    minutes,
    rate,
    costEach,
    priceEach,
    degrees,
  } = entry;
  switch (fact.type) {
    case 'received':
      return {
        ...fact,
        grams: grams ?? fact.grams,
        pieces: pieces ?? fact.pieces,
        ...priceOf(fact, price, cost),
      };
    case 'weighed':
      return { ...fact, grams: netOf(fact, grams), creditPerLb: credit ?? fact.creditPerLb };
    case 'portioned':
      return {
        ...fact,
        count: count ?? fact.count,
        eachGrams: each ?? fact.eachGrams,
        grams: grams ?? fact.grams,
      };
    case 'priced':
      return price && { ...fact, perLb: price };
    case 'readyCutPriced': {
      const byPortion = priceEach ?? costEach;
      if (byPortion !== undefined && fact.eachGrams !== undefined)
        return { ...fact, each: byPortion, perLb: perLbOf(byPortion, fact.eachGrams) };
      if (price === undefined) return undefined;
      return fact.each === undefined
        ? { ...fact, perLb: price }
        : { type: fact.type, item: fact.item, supplier: fact.supplier, perLb: price };
    }
    case 'credited':
      return credit && { ...fact, perLb: credit };
    case 'labored':
      return { ...fact, minutes: minutes ?? fact.minutes, ratePerHour: rate ?? fact.ratePerHour };
    case 'packed':
      return costEach && { ...fact, costEach };
    case 'tared':
    case 'cooked':
    case 'served':
      return grams && { ...fact, grams };
    case 'ground':
      return grams && { ...fact, grams };
    case 'temperatureRead':
      return degrees && judgedAnew(scene, fact, degrees);
    case 'thermometerChecked':
      return degrees && { ...fact, degreesF: degrees };
    case 'listed':
    case 'sourced':
    case 'carriedOver':
    case 'cleaned':
    case 'batchBegun':
    case 'coolingBegun':
    case 'lotEnded':
    case 'batchEnded':
    case 'binned':
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
    case 'ended':
    case 'sold':
      return undefined;
  }
}

/** A price per pound or a sum takes the place of either. */
function priceOf(
  fact: Extract<PlainFact, { type: 'received' }>,
  price: Correct['price'],
  cost: Correct['cost'],
): { perLb?: Correct['price']; cost?: Correct['cost'] } {
  if (price === undefined && cost === undefined) return { perLb: fact.perLb, cost: fact.cost };
  return cost === undefined ? { perLb: price, cost: undefined } : { perLb: undefined, cost };
}

/** What the scale shows is put right: the container stays on it. */
const netOf = ({ grams, tareGrams }: FactOf<'weighed'>, shown: Grams | undefined): Grams =>
  shown === undefined ? grams : tareGrams === undefined ? shown : shown.minus(tareGrams);

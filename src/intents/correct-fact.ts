// A fact with what the correction says in its place.
import type { EntryOf } from '../core/entry.ts';
import type { PlainFact } from '../core/facts.ts';
import { decimal } from '../core/decimal.ts';
import { perLbOf } from '../core/money.ts';
import { list, name, percent, say, weight } from '../core/reply.ts';
import { OVERWEIGHT_TOLERANCE } from '../core/figures.ts';
import { figuresOf, line, overweightAsk, receivedLine } from './card.ts';
import type { Correctable } from './correct-target.ts';
import { factWords } from './fact-words.ts';
import { answered, asks, confirm, type Decision, recorded, refused, type Response, type Scene } from './intent.ts';
import { respondLabor } from './labor.ts';
import { respondPacking } from './packing.ts';
import { respondPortions } from './portions.ts';
import { far } from './receive.ts';
import { verdictLines } from './verdict-lines.ts';
import { respond as respondWeigh } from './weigh.ts';

type Correct = EntryOf<'correct'>;

export function applyCorrection(scene: Scene, entry: Correct, target: Correctable): Decision {
  const by = changed(target.fact, entry);
  if (by === undefined) return refused(say('nothing-to-correct'));
  if (JSON.stringify(by) === JSON.stringify(target.fact)) return answered(say('already', { of: list(factWords({ fact: by, item: target.item })) }));
  return implausible(scene, entry, { ...target, fact: by }) ?? recordCorrection({ ...target, fact: by });
}

/** Records that the fact holds in the place of the target's. */
export function recordCorrection({ target, fact, test, item }: Correctable): Decision {
  const about = fact.type === 'received' || fact.type === 'priced' || fact.type === 'readyCutPriced' ? fact.item : item;
  return recorded([{ test, item: about, fact: { type: 'corrected', target, by: fact } }], (now) => respond(now, { target, fact, test, item: about }));
}

/** The fact with the said fields; undefined where it has none of them. */
function changed(fact: PlainFact, entry: Correct): PlainFact | undefined {
  const { weight: grams, price, cost, pieces, credit, count, each, minutes, rate, costEach, priceEach } = entry;
  switch (fact.type) {
    case 'received':
      return { ...fact, grams: grams ?? fact.grams, pieces: pieces ?? fact.pieces, ...priceOf(fact, price, cost) };
    case 'weighed':
      return { ...fact, grams: grams ?? fact.grams, creditPerLb: credit ?? fact.creditPerLb };
    case 'portioned':
      return { ...fact, count: count ?? fact.count, eachGrams: each ?? fact.eachGrams, grams: grams ?? fact.grams };
    case 'priced':
      return price && { ...fact, perLb: price };
    case 'readyCutPriced': {
      const byPortion = priceEach ?? costEach;
      if (byPortion !== undefined && fact.eachGrams !== undefined) return { ...fact, each: byPortion, perLb: perLbOf(byPortion, fact.eachGrams) };
      return price && { type: fact.type, item: fact.item, perLb: price };
    }
    case 'credited':
      return credit && { ...fact, perLb: credit };
    case 'labored':
      return { ...fact, minutes: minutes ?? fact.minutes, ratePerHour: rate ?? fact.ratePerHour };
    case 'packed':
      return costEach && { ...fact, costEach };
    case 'tared':
      return grams && { ...fact, grams };
    default:
      return undefined;
  }
}

/** A price per pound or a sum takes the place of either. */
function priceOf(fact: Extract<PlainFact, { type: 'received' }>, price: Correct['price'], cost: Correct['cost']): { perLb?: Correct['price']; cost?: Correct['cost'] } {
  if (price === undefined && cost === undefined) return { perLb: fact.perLb, cost: fact.cost };
  return cost === undefined ? { perLb: price, cost: undefined } : { perLb: undefined, cost };
}

const HALF = decimal('0.5');

/** The same questions that the entry itself would have met. */
function implausible(scene: Scene, entry: Correct, { fact, test: id }: Correctable): Decision | undefined {
  if (fact.type === 'received') {
    const doubt = far(scene, { kind: 'receive', item: fact.item, weight: fact.grams, pieces: fact.pieces, sure: entry.sure }, fact.item);
    return doubt?.is === 'asked' ? confirm(doubt.ask.asked, entry) : undefined;
  }
  const test = id === undefined ? undefined : scene.kitchen.tests.get(id);
  if (fact.type !== 'weighed' || test === undefined) return undefined;
  const args = { part: name(fact.part), weight: weight(fact.grams), received: weight(test.received.grams), share: percent(fact.grams.div(test.received.grams).times(100)) };
  if (fact.grams.gt(test.received.grams.plus(OVERWEIGHT_TOLERANCE))) return asks(say('ask-heavier-than-piece', args));
  return fact.grams.gt(test.received.grams.times(HALF)) && entry.sure !== true ? confirm(say('ask-over-half', args), entry) : undefined;
}

function respond(scene: Scene, { fact, test: id, item }: Correctable): Response {
  const test = id === undefined ? undefined : scene.kitchen.tests.get(id);
  const read = say('corrected', { what: list(factWords({ fact, item })) });
  if (test === undefined) return { say: [read, ...(fact.type === 'readyCutPriced' ? verdictLines(scene, fact.item) : [])] };
  switch (fact.type) {
    case 'weighed':
      return respondWeigh(scene, test, { part: fact.part });
    case 'portioned':
      return respondPortions(scene, test);
    case 'labored':
      return respondLabor(scene, test);
    case 'packed':
      return respondPacking(scene, test);
    case 'received':
      return { say: [receivedLine(test, figuresOf(scene, test))], ask: overweightAsk(scene, test) };
    default:
      return { say: [line(read)] };
  }
}

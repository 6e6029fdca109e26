// A fact with what the correction says in its place.
import type { EntryOf } from '../core/entry.ts';
import type { FactOf, PlainFact } from '../core/facts.ts';
import { decimal } from '../core/decimal.ts';
import { perLbOf } from '../core/money.ts';
import { toPlainJson } from '../core/plain-json.ts';
import { list, name, percent, say, weight } from '../core/reply.ts';
import { OVERWEIGHT_TOLERANCE } from '../core/figures.ts';
import type { Test } from '../core/test.ts';
import { askedOf, figuresOf, overweightAsk, receivedLine } from './card.ts';
import type { Correctable } from './correct-target.ts';
import { cookedDoubt, respondCooked } from './cooked.ts';
import { endPiece } from './end-piece.ts';
import { factWords } from './fact-words.ts';
import { respondCredit } from './credit.ts';
import { answered, asks, confirm, type Decision, lacking, recorded, refused, type Response, type Scene } from './intent.ts';
import { inPlaceOf } from './instead.ts';
import { respondLabor } from './labor.ts';
import { respondPacking } from './packing.ts';
import { besideList } from './portions-list.ts';
import { respondPortions } from './portions-reply.ts';
import { respondPrice } from './price.ts';
import { far } from './receive.ts';
import { costLines } from './result.ts';
import { testVerdictLines, verdictLines } from './verdict-lines.ts';
import { judgedAnew, readingResponse } from './reading.ts';
import { checkWords } from './thermometer.ts';
import { respond as respondWeigh } from './weigh.ts';

type Correct = EntryOf<'correct'>;

/** Puts the said fields into the fact, unless what comes out would be asked about. */
export function applyCorrection(scene: Scene, entry: Correct, target: Correctable): Decision {
  const { fact: said } = target;
  if (said.type === 'ended') return anotherEnd(scene, entry, { ...target, fact: said });
  const by = changed(scene, said, entry);
  if (by === undefined) return refused(say('nothing-to-correct'));
  if (toPlainJson(by) === toPlainJson(target.fact)) {
    const there = list(factWords({ fact: by, item: target.item }));
    return answered(say('already', { of: there }));
  }
  const after = { ...target, fact: by };
  return implausible(scene, entry, { after, before: target.fact }) ?? shorterThanList(scene, entry, after) ?? recordCorrection(after);
}

/** An end piece of another weight gives other portions and another rest: the whole entry is made anew. */
function anotherEnd(scene: Scene, { each }: Correct, target: Correctable & { readonly fact: FactOf<'ended'> }): Decision {
  if (each === undefined) return refused(say('nothing-to-correct'));
  const { rest } = target.fact;
  return inPlaceOf(scene, target.target, (without) => endPiece.decide(without, { kind: 'endPiece', each, rest, test: target.test }));
}

/** Records that the fact holds in the place of the target's. */
export function recordCorrection({ target, fact, test, lot, item }: Correctable): Decision {
  const about = fact.type === 'received' || fact.type === 'priced' || fact.type === 'readyCutPriced' ? fact.item : item;
  return recorded([{ test, lot, item: about, fact: { type: 'corrected', target, by: fact } }], (now) => respond(now, { target, fact, test, lot, item: about, saidIn: target }));
}

/** The fact with the said fields; undefined where it has none of them. */
function changed(scene: Scene, fact: PlainFact, entry: Correct): PlainFact | undefined {
  const { weight: grams, price, cost, pieces, credit, count, each, minutes, rate, costEach, priceEach, degrees } = entry;
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
      if (price === undefined) return undefined;
      return fact.each === undefined ? { ...fact, perLb: price } : { type: fact.type, item: fact.item, supplier: fact.supplier, perLb: price };
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
function priceOf(fact: Extract<PlainFact, { type: 'received' }>, price: Correct['price'], cost: Correct['cost']): { perLb?: Correct['price']; cost?: Correct['cost'] } {
  if (price === undefined && cost === undefined) return { perLb: fact.perLb, cost: fact.cost };
  return cost === undefined ? { perLb: price, cost: undefined } : { perLb: undefined, cost };
}

const HALF = decimal('0.5');

interface Change {
  readonly after: Correctable;
  readonly before: PlainFact;
}

/** The same questions that the entry itself would have met. */
function implausible(scene: Scene, entry: Correct, { after: { fact, test: id }, before }: Change): Decision | undefined {
  const wants = lacking(entry, 'weight');
  if (fact.type === 'received') {
    const { item, grams, pieces } = fact;
    const doubt = entry.weight && far(scene, { kind: 'receive', item, weight: grams, pieces, sure: entry.sure }, item);
    return doubt?.is === 'asked' ? confirm(doubt.ask.asked, entry, wants) : undefined;
  }
  const test = id === undefined ? undefined : scene.kitchen.tests.get(id);
  if (isCooked(fact) && test !== undefined) return cookedOtherwise(scene, test, { entry, fact });
  if (fact.type !== 'weighed' || before.type !== 'weighed' || test === undefined) return undefined;
  const { grams: received } = test.received;
  const total = test.parts.find(({ part }) => part === fact.part)?.grams ?? before.grams;
  const grams = fact.mode === 'add' ? total.minus(before.grams).plus(fact.grams) : fact.grams;
  const share = percent(grams.div(received).times(100));
  const args = { part: name(fact.part), weight: weight(grams), received: weight(received), share };
  if (grams.gt(received.plus(OVERWEIGHT_TOLERANCE)))
    return asks(askedOf(scene, test, say('ask-heavier-than-piece', args)), { wants });
  if (!grams.gt(received.times(HALF)) || entry.sure === true || entry.weight === undefined) return undefined;
  return confirm(askedOf(scene, test, say('ask-over-half', args)), entry, wants);
}

/** Asked as the cooked weight itself would be, and answered with a correction. */
function cookedOtherwise(scene: Scene, test: Test, { entry, fact }: { entry: Correct; fact: FactOf<'cooked'> | FactOf<'served'> }): Decision | undefined {
  const doubt = cookedDoubt(scene, test, { kind: fact.type, weight: fact.grams, sure: entry.sure });
  if (doubt?.is !== 'asked') return undefined;
  const wants = lacking(entry, 'weight');
  return 'yes' in doubt.ask.choices ? confirm(doubt.ask.asked, entry, wants) : asks(doubt.ask.asked, { wants });
}

/** A count below the length of the list is asked about, as where it is said for the first time. */
function shorterThanList(scene: Scene, { count, each }: Correct, { fact, test: id }: Correctable): Decision | undefined {
  const test = id === undefined ? undefined : scene.kitchen.tests.get(id);
  if (fact.type !== 'portioned' || count === undefined || test === undefined) return undefined;
  return besideList(scene, test, { kind: 'portions', count, each, test: test.id });
}

const isCooked = (fact: PlainFact): fact is FactOf<'cooked'> | FactOf<'served'> => fact.type === 'cooked' || fact.type === 'served';

function respond(scene: Scene, { target, fact, test: id, lot, item }: Correctable): Response {
  if (fact.type === 'temperatureRead') return readingResponse(scene, { fact, lot, entry: target });
  if (fact.type === 'thermometerChecked') return { say: checkWords(fact) };
  const test = id === undefined ? undefined : scene.kitchen.tests.get(id);
  const response = factResponse(scene, { fact, item, test });
  if (test?.status !== 'closed' || isCooked(fact)) return response;
  return { say: [...response.say, ...costLines(figuresOf(scene, test)), ...testVerdictLines(scene, test)] };
}

/** As the entry itself would have been read back. */
function factResponse(scene: Scene, { fact, item, test }: { fact: PlainFact; item?: string; test?: Test }): Response {
  const read: Response = { say: [say('corrected', { what: list(factWords({ fact, item })) })] };
  if (fact.type === 'priced') return respondPrice(scene, { ...fact, price: fact.perLb }, test);
  if (fact.type === 'readyCutPriced') return { say: [...read.say, ...verdictLines(scene, fact.item)] };
  if (fact.type === 'credited') return respondCredit(scene, { ...fact, credit: fact.perLb, test: test?.id });
  if (test === undefined) return read;
  if (isCooked(fact)) return respondCooked(scene, test, { kind: fact.type, weight: fact.grams });
  if (fact.type === 'weighed') return respondWeigh(scene, test, { part: fact.part });
  if (fact.type === 'portioned') return respondPortions(scene, test);
  if (fact.type === 'labored') return respondLabor(scene, test);
  if (fact.type === 'packed') return respondPacking(scene, test);
  if (fact.type === 'received') return { say: [receivedLine(test, figuresOf(scene, test))], ask: overweightAsk(scene, test) };
  return read;
}

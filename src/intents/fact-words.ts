// A fact in a few words, for reading back what was taken back or corrected.
import { ZERO } from '../core/decimal.ts';
import type { FactOf, PlainFact, Recorded } from '../core/facts.ts';
import {
  list,
  name,
  number,
  type Reply,
  saidMoney,
  saidPrice,
  say,
  sayCost,
  size,
  weight,
} from '../core/reply.ts';
import { reminderWords } from './remind.ts';
import { readyCutWords } from './ready-cut.ts';
import { safetyWords } from './safety-words.ts';

/** The words of what an entry recorded; of a correction, what it put in the place of the original. */
export function factWords({ fact: any, item }: Pick<Recorded, 'fact' | 'item'>): readonly Reply[] {
  const fact = any.type === 'corrected' ? any.by : any;
  switch (fact.type) {
    case 'received':
      return receivedWords(fact);
    case 'weighed':
      return [
        say(fact.mode === 'add' ? 'part-plus' : 'part-weight', {
          part: name(fact.part),
          weight: weight(fact.grams),
        }),
      ];
    case 'portioned':
      return portionWords(fact);
    case 'listed':
      return [
        say('weights', { weights: list(fact.eachGrams.map((each) => say('size', { size: size(each) }))) }),
      ];
    case 'removed':
      return [say('removed', { part: name(fact.part) })];
    case 'tared':
      return [say('tare-is', { container: name(fact.container), weight: weight(fact.grams) })];
    case 'noted':
      return [say('note', { text: fact.text })];
    case 'chosen':
      return [say('setting-name', { setting: fact.setting })];
    case 'voiceChosen':
      return [say('aloud-name')];
    case 'closed':
      return [say('closing', { item: name(item ?? '') })];
    case 'dropped':
      return [say('dropping', { item: name(item ?? '') })];
    case 'sold':
      return [say('product', { part: name(fact.part) })];
    case 'ended':
      return [say('end-piece', { size: size(fact.grams) })];
    case 'cooked':
      return [say('cooked-weight', { weight: weight(fact.grams) })];
    case 'served':
      return [say('served-weight', { weight: weight(fact.grams) })];
    case 'reminderSet':
      return [reminderWords(fact)];
    case 'reminderCancelled':
      return [say('reminder-cancelling', { number: fact.number })];
    case 'acknowledged':
      return [say('acknowledging', { count: fact.keys.length })];
    case 'fired':
    case 'turned':
    case 'undone':
      return [];
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
      return [safetyWords(fact)];
    case 'priced':
    case 'readyCutPriced':
    case 'credited':
    case 'labored':
    case 'packed':
      return [costWords(fact)];
  }
}

type CostFact = Extract<PlainFact, { type: 'priced' | 'readyCutPriced' | 'credited' | 'labored' | 'packed' }>;

/** Each with what is said of it to those who may not see costs. */
function costWords(fact: CostFact): Reply {
  switch (fact.type) {
    case 'priced':
      return sayCost(
        'price-is',
        { item: name(fact.item), price: saidPrice(fact.perLb) },
        say('price-of-item', { item: name(fact.item) }),
      );
    case 'readyCutPriced':
      return readyCutWords(fact, 'ready-cut-of-item');
    case 'credited':
      return sayCost(
        'credit-set',
        { part: name(fact.part), price: saidPrice(fact.perLb) },
        say('value-of-part', { part: name(fact.part) }),
      );
    case 'labored':
      return fact.minutes === undefined
        ? sayCost('labor-rate-set', { rate: saidMoney(fact.ratePerHour ?? ZERO) }, say('labor-rate'))
        : say('minutes', { minutes: number(fact.minutes, 1) });
    case 'packed':
      return sayCost('packing-each', { cost: saidMoney(fact.costEach) }, say('packing'));
  }
}

function receivedWords(fact: FactOf<'received'>): readonly Reply[] {
  const words: Reply[] = [say('received-weight', { item: name(fact.item), weight: weight(fact.grams) })];
  if (fact.pieces !== undefined) words.push(say('pieces', { count: fact.pieces }));
  if (fact.perLb !== undefined) words.push(sayCost('per-pound', { price: saidPrice(fact.perLb) }));
  if (fact.cost !== undefined) words.push(sayCost('in-all', { cost: saidMoney(fact.cost) }));
  return words;
}

function portionWords(fact: FactOf<'portioned'>): readonly Reply[] {
  const words: Reply[] = [];
  if (fact.count !== undefined)
    words.push(
      fact.eachGrams === undefined
        ? say('portions-count', { count: fact.count })
        : say('portions-sized', { count: fact.count, size: size(fact.eachGrams) }),
    );
  else if (fact.eachGrams !== undefined) words.push(say('portion-size', { size: size(fact.eachGrams) }));
  if (fact.grams !== undefined) words.push(say('portions-weight', { weight: weight(fact.grams) }));
  return words;
}

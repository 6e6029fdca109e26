// A fact in a few words, for reading back what was taken back or corrected.
import { ZERO } from '../core/decimal.ts';
import type { Recorded } from '../core/facts.ts';
import { list, money, name, number, price, type Reply, say, sayCost, size, weight } from '../core/reply.ts';

export function factWords({ fact: any, item }: Pick<Recorded, 'fact' | 'item'>): readonly Reply[] {
  const fact = any.type === 'corrected' ? any.by : any;
  switch (fact.type) {
    case 'received':
      return [say('received-weight', { item: name(fact.item), weight: weight(fact.grams) })];
    case 'weighed':
      return [say(fact.mode === 'add' ? 'part-plus' : 'part-weight', { part: name(fact.part), weight: weight(fact.grams) })];
    case 'portioned':
      return portionWords(fact);
    case 'listed':
      return [say('weights', { weights: list(fact.eachGrams.map((each) => say('size', { size: size(each) }))) })];
    case 'priced':
      return [sayCost('price-set', { item: name(fact.item), price: price(fact.perLb) })];
    case 'readyCutPriced':
      return [sayCost('ready-cut-set', { item: name(fact.item), price: price(fact.perLb) })];
    case 'credited':
      return [sayCost('credit-set', { part: name(fact.part), price: price(fact.perLb) })];
    case 'labored':
      return fact.minutes === undefined ? [sayCost('labor-rate-set', { rate: money(fact.ratePerHour ?? ZERO) })] : [say('minutes', { minutes: number(fact.minutes, 1) })];
    case 'packed':
      return [sayCost('packing-each', { cost: money(fact.costEach) })];
    case 'tared':
      return [say('tare-set', { container: name(fact.container), weight: weight(fact.grams) })];
    case 'removed':
      return [say('removed', { part: name(fact.part) })];
    case 'noted':
      return [say('note', { text: fact.text })];
    case 'closed':
      return [say('closing', { item: name(item ?? '') })];
    case 'dropped':
      return [say('dropping', { item: name(item ?? '') })];
    case 'turned':
    case 'undone':
      return [];
  }
}

function portionWords(fact: Extract<Recorded['fact'], { type: 'portioned' }>): readonly Reply[] {
  const words: Reply[] = [];
  if (fact.count !== undefined) words.push(fact.eachGrams === undefined ? say('portions-count', { count: fact.count }) : say('portions-sized', { count: fact.count, size: size(fact.eachGrams) }));
  else if (fact.eachGrams !== undefined) words.push(say('portion-size', { size: size(fact.eachGrams) }));
  if (fact.grams !== undefined) words.push(say('portions-weight', { weight: weight(fact.grams) }));
  return words;
}

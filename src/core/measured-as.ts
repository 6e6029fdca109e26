// A number that was said without a word for what it is, read as the slot that wants it.
import type { BareNumber } from './entry.ts';

/** In the measure of the slot (grams, money, a count …); undefined where the number can't be that. */
export function measuredAs(number: BareNumber, slot: string): unknown {
  switch (slot) {
    case 'weight':
    case 'tare':
      return number.weight;
    case 'each':
      return number.each;
    case 'price':
    case 'credit':
      return number.price;
    case 'cost':
    case 'priceEach':
    case 'costEach':
    case 'rate':
    case 'foodCostPct':
      return number.money;
    case 'count':
    case 'counted':
    case 'pieces':
      return number.count;
    case 'minutes':
      return number.minutes;
    case 'degrees':
      return number.degrees;
    case 'lot':
      return number.count;
    default:
      return undefined;
  }
}

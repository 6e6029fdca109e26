// Entries under the names that the outside knows: weights in pounds, portions in ounces, prices per pound, as decimal strings.
import { type Decimal, isDecimal, significant } from './decimal.ts';
import type { BareNumber } from './entry.ts';
import { fromGrams } from './quantity.ts';

export type Json = string | number | boolean | null | readonly Json[] | { readonly [name: string]: Json };

/** A result as a decimal string: exact where that is short, else to 20 significant digits. */
export const figure = (value: Decimal): string => significant(value, 20).toString();

type Write = (value: Decimal) => string;
const inLb: Write = (grams) => figure(fromGrams(grams, 'lb'));
const inOz: Write = (grams) => figure(fromGrams(grams, 'oz'));

const NUMBERS: Readonly<Record<string, readonly [name: string, write: Write]>> = {
  weight: ['weightLb', inLb],
  each: ['eachOz', inOz],
  price: ['pricePerLb', figure],
  cost: ['cost', figure],
  credit: ['creditPerLb', figure],
  priceEach: ['priceEach', figure],
  minutes: ['minutes', figure],
  rate: ['ratePerHour', figure],
  costEach: ['costEach', figure],
  foodCostPct: ['foodCostPct', figure],
  degrees: ['degreesF', figure],
};
const PLAIN = new Set([
  'item',
  'part',
  'newItem',
  'newPart',
  'supplier',
  'container',
  'text',
  'mode',
  'count',
  'pieces',
  'setting',
  'value',
  'by',
  'what',
  'point',
  'how',
  'none',
  'supplierLot',
  'establishment',
  'produced',
  'rest',
  'when',
  'repeat',
  'period',
  'all',
  'format',
  'view',
]);
/** Slots that the table of entries does not list for a kind. */
const HIDDEN: Readonly<Record<string, readonly string[]>> = {
  weigh: ['container'],
  price: ['supplier'],
  readyCut: ['supplier'],
  askCost: ['supplier', 'each'],
  askMenuPrice: ['each'],
  grind: ['item', 'supplierLot', 'establishment', 'supplier', 'produced'],
  correct: ['degrees'],
  setting: ['degrees'],
  askPlan: ['item'],
};

/** A bare number, as what it most likely measures: a weight, unless it can't be one or is said as a price. */
function bareJson({ weight, price, minutes }: BareNumber, isPrice: boolean): Json {
  if (isPrice && price !== undefined) return { pricePerLb: figure(price) };
  if (weight !== undefined) return { weightLb: inLb(weight) };
  if (price !== undefined) return { pricePerLb: figure(price) };
  return minutes === undefined ? {} : { minutes: figure(minutes) };
}

/** An entry as a plain object; only slots that the outside knows appear. */
export function entryJson(entry: Readonly<Record<string, unknown>> & { readonly kind: string }): Json {
  const out: Record<string, Json> = { kind: entry.kind };
  for (const [slot, value] of Object.entries(entry)) {
    if (value === undefined || HIDDEN[entry.kind]?.includes(slot) === true) continue;
    if (slot === 'number') Object.assign(out, bareJson(value as BareNumber, entry['priced'] === true));
    const number = NUMBERS[slot];
    if (number !== undefined && isDecimal(value)) out[number[0]] = number[1](value);
    else if (slot === 'eachList') out['eachOz'] = (value as readonly Decimal[]).map(inOz);
    else if (PLAIN.has(slot)) out[slot] = value as Json;
  }
  return out;
}

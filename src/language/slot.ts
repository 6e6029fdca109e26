// What a slot of a sentence reads: its value, what was said with it, and what is possible.
import type { Decimal } from '../core/decimal.ts';
import type { BareNumber } from '../core/entry.ts';
import type { KitchenUnit, WeightUnit } from '../core/quantity.ts';
import { COST, type Reading } from './reading.ts';
import type { Token } from './token.ts';
import type { WeightWords } from './weight.ts';

export type SlotValue = string | number | Decimal | readonly Decimal[] | BareNumber;

/** A read slot. `unit` and `per` are the units that were said beside it. */
export interface SlotReading extends Reading<SlotValue> {
  readonly unit?: WeightUnit;
  readonly per?: WeightUnit;
  /** Of a price without a unit: the units of the system that the kitchen does not use. */
  readonly bareOther?: readonly WeightUnit[];
  /** Of free text: the token that it begins with. */
  readonly from?: number;
  /** What the value says of other slots: a food, how it must be treated. */
  readonly also?: Readonly<Record<string, string>>;
  /** A name that is in no list. */
  readonly free?: true;
}

/** What no scale, price list or kitchen could show; in grams, per lb, per piece, in minutes. */
export interface Limits {
  readonly minWeightGrams: Decimal;
  readonly maxReceivedGrams: Decimal;
  readonly maxPortionGrams: Decimal;
  readonly minPortionGrams: Decimal;
  readonly maxPricePerLb: Decimal;
  readonly maxSum: Decimal;
  readonly maxPieces: number;
  readonly maxCount: number;
  readonly maxMinutes: number;
}

export interface SlotContext extends WeightWords {
  readonly unit: KitchenUnit;
  readonly limits: Limits;
}

export type SlotReader = (tokens: readonly Token[], at: number) => readonly SlotReading[];

/** The reading, or where it is not possible the same in doubt. */
export const impossible = (reading: SlotReading, possible: boolean): SlotReading =>
  possible || reading.doubt !== undefined
    ? reading
    : { ...reading, cost: reading.cost + COST.doubt, doubt: 'impossible' };

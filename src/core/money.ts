// Prices. Canonical inside: the kitchen's currency per pound, because a pound is a finite decimal of every
// other unit (a price per pound made from one per kilogram is exact; per gram it would not be).
import type { Decimal } from './decimal.ts';
import { GRAMS_PER, type Grams, type WeightUnit } from './quantity.ts';

/** A price in the kitchen's currency per pound. */
export type PerLb = Decimal;

/** A sum of money in the kitchen's currency. */
export type Money = Decimal;

/** A price per unit, per pound. Exact for lb, kg and g; for oz too (16 to the pound). */
export const perLbFrom = (price: Decimal, unit: WeightUnit): PerLb =>
  unit === 'lb' ? price : price.times(GRAMS_PER.lb).div(GRAMS_PER[unit]);

/** A price per pound, per unit. */
export const perUnit = (perLb: PerLb, unit: WeightUnit): Decimal =>
  unit === 'lb' ? perLb : perLb.times(GRAMS_PER[unit]).div(GRAMS_PER.lb);

/** What a weight costs at a price per pound. A quotient: 40 digits. */
export const costOf = (grams: Grams, perLb: PerLb): Money => grams.times(perLb).div(GRAMS_PER.lb);

/** The price per pound of a weight bought for a sum. */
export const perLbOf = (cost: Money, grams: Grams): PerLb => cost.times(GRAMS_PER.lb).div(grams);

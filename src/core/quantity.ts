// Weights. The canonical unit inside is the gram: every unit that a kitchen speaks is a finite decimal of it,
// so that nothing is rounded on the way in. 1 lb = 0.45359237 kg, 1 oz = 1/16 lb: NIST Handbook 44, appendix C.
import { decimal, type Decimal } from './decimal.ts';

/** A weight in grams. */
export type Grams = Decimal;

/** The weight units that can be spoken. */
export type WeightUnit = 'lb' | 'oz' | 'kg' | 'g';

/** The units that a kitchen can be set to. */
export type KitchenUnit = 'lb' | 'kg';

export const GRAMS_PER: Readonly<Record<WeightUnit, Decimal>> = {
  lb: decimal('453.59237'),
  oz: decimal('28.349523125'),
  kg: decimal('1000'),
  g: decimal('1'),
};

/** An amount of a unit, in grams. Exact. */
export const toGrams = (amount: Decimal, unit: WeightUnit): Grams => amount.times(GRAMS_PER[unit]);

/** A weight in grams, in a unit. A quotient: 40 digits. */
export const fromGrams = (grams: Grams, unit: WeightUnit): Decimal => grams.div(GRAMS_PER[unit]);

/** The unit that portions are spoken in, in a kitchen of this unit. */
export const portionUnit = (unit: KitchenUnit): WeightUnit => (unit === 'lb' ? 'oz' : 'g');

// From a yield to a quantity: how much to buy for so many portions, how many portions a weight gives, what to charge.
import { type Decimal, HUNDRED, roundDown } from './decimal.ts';
import type { Money } from './money.ts';
import type { Grams } from './quantity.ts';

export interface Order {
  readonly count: number;
  readonly eachGrams: Grams;
  /** What came of what: the yield as the two weights that it is made of (of one test, or pooled). */
  readonly receivedGrams: Grams;
  readonly portionGrams: Grams;
}

/**
 * Portions × size ÷ yield. Round it up for the eye, in the unit of the kitchen: 25.3165 lb is 25.4, not 25.3. It is
 * multiplied before it is divided, so that 10 lb at a yield of one third are 30 lb and not a hair more, rounded to 30.1.
 */
export const gramsToBuy = ({ count, eachGrams, receivedGrams, portionGrams }: Order): Grams =>
  eachGrams.times(count).times(receivedGrams).div(portionGrams);

/** Whole portions of a size (above 0) that a weight gives: rounded down. */
export const portionsFrom = (grams: Grams, eachGrams: Grams): number =>
  roundDown(grams.div(eachGrams)).toNumber();

/** The menu price at which a portion takes so many percent (above 0) of it. */
export const menuPrice = (portionCost: Money, foodCostPct: Decimal): Money =>
  portionCost.times(HUNDRED).div(foodCostPct);

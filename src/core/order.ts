// From a yield to a quantity: how much to buy for so many portions, how many portions a weight gives, what to charge.
import { decimal, type Decimal, HUNDRED, ONE, roundDown, roundUp, ZERO } from './decimal.ts';
import type { Money } from './money.ts';
import { type Pool, poolFigures } from './pool.ts';
import type { Grams } from './quantity.ts';
import { tQuantile90 } from './statistics.ts';

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

/** How many pieces like those tested (above 0 each) that weight is: rounded up. */
export const piecesToBuy = (grams: Grams, pieceGrams: Grams): number =>
  roundUp(grams.div(pieceGrams)).toNumber();

/** From so many tests on, their own spread tells how far the next pieces may fall short. */
const ENOUGH_TESTS = 3;

/**
 * The weight that is enough for the portions with a chance of 90 %: at the yield that the mean of the m pieces to be bought
 * reaches nine times in ten, pooled yield − t(0.90, n − 1) × s × √(1/n + 1/m). That is the one-sided prediction bound for the
 * mean of m future values (Hahn & Meeker, Statistical Intervals, ch. 4; from memory). m is counted at the pooled yield: what is bought on top
 * only makes it surer. Undefined with fewer than 3 tests, and where so few tests differ so much that no amount can be told.
 */
export function gramsToBeSure(
  pool: Pool,
  { count, eachGrams }: Pick<Order, 'count' | 'eachGrams'>,
): Grams | undefined {
  const pooled = poolFigures(pool, {});
  if (pooled?.yieldDeviationPct === undefined || pool.tests < ENOUGH_TESTS) return undefined;
  const pieces = piecesToBuy(gramsToBuy({ count, eachGrams, ...pool }), pool.receivedGrams.div(pool.tests));
  const part = (of: number): Decimal => ONE.div(decimal(of.toString()));
  const error = pooled.yieldDeviationPct.times(part(pool.tests).plus(part(pieces)).sqrt());
  const yieldPct = pooled.yieldPct.minus(tQuantile90(pool.tests - 1).times(error));
  return yieldPct.lte(ZERO) ? undefined : eachGrams.times(count).times(HUNDRED).div(yieldPct);
}

/** The sizes at which a weight goes up evenly: in so many portions as fit, and in one more. */
export function evenSizes(
  grams: Grams,
  eachGrams: Grams,
): readonly { readonly count: number; readonly eachGrams: Grams }[] {
  const fit = portionsFrom(grams, eachGrams);
  return [fit, fit + 1].flatMap((count) => (count < 1 ? [] : [{ count, eachGrams: grams.div(count) }]));
}

/** Whole portions of a size (above 0) that a weight gives: rounded down. */
export const portionsFrom = (grams: Grams, eachGrams: Grams): number =>
  roundDown(grams.div(eachGrams)).toNumber();

/** The menu price at which a portion takes so many percent (above 0) of it. */
export const menuPrice = (portionCost: Money, foodCostPct: Decimal): Money =>
  portionCost.times(HUNDRED).div(foodCostPct);

/** The share of a menu price (above 0), in percent, that a portion takes. */
export const foodCostPct = (portionCost: Money, menu: Money): Decimal => portionCost.times(HUNDRED).div(menu);

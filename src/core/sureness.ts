// How sure a pooled cost is: what several tests tell beyond their sums.
import { decimal, type Decimal, HUNDRED } from './decimal.ts';
import { costOf, type PerLb } from './money.ts';
import { type Pool, poolFigures } from './pool.ts';
import { tQuantile95 } from './statistics.ts';

export interface Interval {
  readonly low: Decimal;
  readonly high: Decimal;
}

/** From so many closed tests on, their own spread tells how sure their mean is. */
export const ENOUGH_TESTS = 3;

/**
 * Where the mean yield lies with 90 %: mean ± t(0.95, n−1) × s ÷ √n, two-sided, of the unweighted single yields;
 * undefined for fewer than three tests.
 */
export function yieldInterval(pool: Pool): Interval | undefined {
  const pooled = poolFigures(pool, {});
  if (pooled?.yieldDeviationPct === undefined || pool.tests < ENOUGH_TESTS) return undefined;
  const error = pooled.yieldDeviationPct.div(decimal(pool.tests.toString()).sqrt());
  const margin = tQuantile95(pool.tests - 1).times(error);
  return { low: pooled.meanYieldPct.minus(margin), high: pooled.meanYieldPct.plus(margin) };
}

/**
 * Where the usable cost lies with 90 %: (p − Σ credits ÷ Σ received) ÷ yield at both ends of the interval of the yield.
 * What a received pound costs after credits is held, so that the cheap end has the high yield. Undefined where the yield
 * could be nothing at all.
 */
export function usableCostInterval(pool: Pool, pricePerLb: PerLb): Interval | undefined {
  const shares = yieldInterval(pool);
  if (shares === undefined || !shares.low.gt(0)) return undefined;
  const net = costOf(pool.receivedGrams, pricePerLb).minus(pool.credit);
  const at = (pct: Decimal): Decimal => net.times(HUNDRED).div(costOf(pool.receivedGrams, pct));
  return { low: at(shares.high), high: at(shares.low) };
}

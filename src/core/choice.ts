// Which way a comparison falls, and when it is too close to call.
import type { Break } from './break-even.ts';
import { decimal, type Decimal, ONE, ZERO } from './decimal.ts';
import { type Pool, poolFigures } from './pool.ts';
import { tQuantile95 } from './statistics.ts';

/** `close`: the difference is within what the yield may vary by, or there is none. */
export type Choice = 'cut' | 'buy' | 'close' | 'unknown';

/** Quotients have 40 digits: what is smaller than this is the dust of their rounding, not a difference. */
const DUST = decimal('0.00000000000000000001');

/** Whether a difference is none. */
export const isNothing = (difference: Decimal): boolean => difference.abs().lte(DUST);

/** The choice that the turning points and the yield known so far allow. */
export function choose(points: Break, yieldPct: Decimal | undefined, pool: Pool): Choice {
  const { savingPerLb, breakEvenYieldPct } = points;
  if (savingPerLb === undefined || breakEvenYieldPct === undefined || yieldPct === undefined)
    return 'unknown';
  // Where both cost the same to the last digit, neither is cheaper: no number of tests decides it.
  if (isNothing(savingPerLb)) return 'close';
  const { middle, margin } = likelyYield(yieldPct, pool);
  if (breakEvenYieldPct.minus(middle).abs().lte(margin.plus(DUST))) return 'close';
  return savingPerLb.gt(ZERO) ? 'cut' : 'buy';
}

/** From so many closed tests on, their own spread tells how sure their mean is. */
const ENOUGH_TESTS = 3;

/** Where the yield of the next piece may lie: 1 point around what is known of one or two, else mean ± t(0.95, n−1) × s ÷ √n. */
function likelyYield(yieldPct: Decimal, pool: Pool): { readonly middle: Decimal; readonly margin: Decimal } {
  const pooled = poolFigures(pool, {});
  if (pooled?.yieldDeviationPct === undefined || pool.tests < ENOUGH_TESTS)
    return { middle: yieldPct, margin: ONE };
  const error = pooled.yieldDeviationPct.div(decimal(pool.tests.toString()).sqrt());
  return { middle: pooled.meanYieldPct, margin: tQuantile95(pool.tests - 1).times(error) };
}

// Which way a comparison falls, and when it is too close to call.
import type { Break } from './break-even.ts';
import { decimal, type Decimal, ONE, ZERO } from './decimal.ts';
import type { Pool } from './pool.ts';
import { yieldInterval } from './sureness.ts';

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

/** Where the yield of the next piece may lie: 1 point around what is known of one or two tests, else the interval of their mean. */
function likelyYield(yieldPct: Decimal, pool: Pool): { readonly middle: Decimal; readonly margin: Decimal } {
  const interval = yieldInterval(pool);
  if (interval === undefined) return { middle: yieldPct, margin: ONE };
  const middle = interval.low.plus(interval.high).div(2);
  return { middle, margin: interval.high.minus(middle) };
}

// Shares out a sum of money so that no cent is lost: the one place beside render where money is rounded.
import { type Decimal, decimal, ONE, roundDown, roundTo, sum, ZERO } from './decimal.ts';
import type { Money } from './money.ts';

const CENT = decimal('0.01');

/**
 * The sum, to the cent, in shares by weights (none below 0, not all 0). Each share is rounded down, and the cents that are left go one
 * by one to the shares with the largest remainders, of equal ones to the first: the method of largest remainders.
 */
export function shareOut(total: Money, weights: readonly Decimal[]): readonly Money[] {
  const whole = sum(weights);
  const cents = roundTo(total, 2).div(CENT);
  const exact = weights.map((each) => cents.times(each).div(whole));
  const least = exact.map((each) => roundDown(each));
  const left = cents.minus(sum(least)).toNumber();
  const first = new Set(
    exact
      .map((each, at) => ({ at, rest: each.minus(least[at] ?? ZERO) }))
      .sort((a, b) => b.rest.comparedTo(a.rest) || a.at - b.at)
      .slice(0, left)
      .map(({ at }) => at),
  );
  return least.map((each, at) => each.plus(first.has(at) ? ONE : ZERO).times(CENT));
}

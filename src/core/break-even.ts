// At which purchase price, ready-cut price or yield cutting and buying cost the same.
import { costsPerLb, type Sums } from './costs.ts';
import { type Decimal, HUNDRED } from './decimal.ts';
import { costOf, type Money, type PerLb, perLbOf } from './money.ts';

/** The saving and the three turning points; each is absent where a price that it needs is. */
export interface Break {
  /** Ready-cut price − compared cost: positive where cutting is cheaper. */
  readonly savingPerLb?: PerLb;
  readonly breakEvenPricePerLb?: PerLb;
  /** The compared cost itself: a ready-cut price below it turns the answer. */
  readonly breakEvenReadyCutPerLb?: PerLb;
  readonly breakEvenYieldPct?: Decimal;
}

export interface Offer {
  readonly sums: Sums;
  readonly purchaseCost?: Money;
  /** Above 0. */
  readonly readyCutPerLb?: PerLb;
}

/**
 * With W received, U usable lb, V credits, L avoidable labour, K packing, p and q the purchase and ready-cut prices:
 * compared cost c = (W p − V + L + K) ÷ U, saving = q − c, p* = (q U + V − L − K) ÷ W, y* = (p − (V − L − K) ÷ W) ÷ q.
 */
export function breakEven({ sums, purchaseCost, readyCutPerLb }: Offer): Break {
  const breakEvenReadyCutPerLb = purchaseCost && costsPerLb(sums, purchaseCost).comparedCostPerLb;
  if (readyCutPerLb === undefined) return { breakEvenReadyCutPerLb };
  const extras = sums.avoidableLabor.plus(sums.packing).minus(sums.credit);
  const bought = costOf(sums.portionGrams, readyCutPerLb);
  return {
    savingPerLb: breakEvenReadyCutPerLb && readyCutPerLb.minus(breakEvenReadyCutPerLb),
    breakEvenPricePerLb: perLbOf(bought.minus(extras), sums.receivedGrams),
    breakEvenReadyCutPerLb,
    breakEvenYieldPct: purchaseCost
      ?.plus(extras)
      .times(HUNDRED)
      .div(costOf(sums.receivedGrams, readyCutPerLb)),
  };
}

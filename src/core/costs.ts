// From weights and money to a cost per usable pound: the residual method of the textbooks, in which what the
// by-products are worth is taken off the purchase and the rest is carried by the portions.
import { type Decimal, decimal } from './decimal.ts';
import { costOf, type Money, type PerLb, perLbOf } from './money.ts';
import type { Grams } from './quantity.ts';
import type { PortionFigures } from './portions.ts';

/** What one test, or several together, took in and gave; the money in the kitchen's currency. */
export interface Sums {
  readonly receivedGrams: Grams;
  readonly portionGrams: Grams;
  readonly credit: Money;
  /** Labour that would not be paid if the pieces were not cut, and labour that is paid anyway. */
  readonly avoidableLabor: Money;
  readonly fixedLabor: Money;
  readonly packing: Money;
}

export interface CostsPerLb {
  /** Net cost ÷ portion weight. */
  readonly usableCostPerLb: PerLb;
  /** The usable cost with all known labour and packing. */
  readonly loadedCostPerLb: PerLb;
  /** The loaded cost without labour that would be paid anyway: what the verdict compares. */
  readonly comparedCostPerLb: PerLb;
}

/** Money; absent while the price, the portion weight or the balance is missing. */
export interface CostFigures extends CostsPerLb {
  readonly costFactor: Decimal;
  /** Of a portion on target, or of the mean portion where no target was said. */
  readonly portionCost?: Money;
  readonly loadedPortionCost?: Money;
  /** Where the mean is off the target by more than 1 %: what the mean portion costs, and that less one on target. */
  readonly meanPortionCost?: Money;
  readonly giveawayPerPortion?: Money;
}

/** The costs per usable pound of pieces bought for a sum. The portion weight must be above 0. */
export function costsPerLb(sums: Sums, purchaseCost: Money): CostsPerLb {
  const net = purchaseCost.minus(sums.credit);
  const compared = net.plus(sums.avoidableLabor).plus(sums.packing);
  return {
    usableCostPerLb: perLbOf(net, sums.portionGrams),
    loadedCostPerLb: perLbOf(compared.plus(sums.fixedLabor), sums.portionGrams),
    comparedCostPerLb: perLbOf(compared, sums.portionGrams),
  };
}

export interface Purchase {
  readonly pricePerLb: PerLb;
  readonly purchaseCost: Money;
}

/** All costs of one test. The price must be above 0. */
export function costFigures(
  sums: Sums,
  purchase: Purchase,
  portions: Pick<PortionFigures, 'targetGrams' | 'meanGrams'>,
): CostFigures {
  const costs = costsPerLb(sums, purchase.purchaseCost);
  const size = portions.targetGrams ?? portions.meanGrams;
  return {
    ...costs,
    costFactor: costs.usableCostPerLb.div(purchase.pricePerLb),
    portionCost: size && costOf(size, costs.usableCostPerLb),
    loadedPortionCost: size && costOf(size, costs.loadedCostPerLb),
    ...giveaway(portions, costs.usableCostPerLb),
  };
}

/** The share of the target by which the mean portion may be off before it is told. */
const MEAN_TOLERANCE = decimal('0.01');

/** Whether the mean portion is near enough to the size asked for. */
export const isOnTarget = (mean: Grams, target: Grams): boolean =>
  mean.minus(target).abs().lte(target.times(MEAN_TOLERANCE));

/** What the portions cost as they were cut. Below target the difference is negative: the guest gives it. */
function giveaway(
  { targetGrams, meanGrams }: Pick<PortionFigures, 'targetGrams' | 'meanGrams'>,
  usableCostPerLb: PerLb,
): Pick<CostFigures, 'meanPortionCost' | 'giveawayPerPortion'> {
  if (targetGrams === undefined || meanGrams === undefined) return {};
  if (isOnTarget(meanGrams, targetGrams)) return {};
  const off = meanGrams.minus(targetGrams);
  return {
    meanPortionCost: costOf(meanGrams, usableCostPerLb),
    giveawayPerPortion: costOf(off, usableCostPerLb),
  };
}

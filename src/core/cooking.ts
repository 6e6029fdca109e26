// From raw portions to what is served: the loss in the pan on its stated base, and what a served pound costs.
import { type Decimal, HUNDRED } from './decimal.ts';
import type { Figures } from './figures.ts';
import { type Money, type PerLb, perLbOf } from './money.ts';
import type { Grams } from './quantity.ts';
import type { Test } from './test.ts';

export interface CookingFigures {
  /** Raw portions − cooked weight, as a share of the raw portions and of the weight paid for. Absent without either weight. */
  readonly lossGrams?: Grams;
  readonly lossOfRawPct?: Decimal;
  readonly lossOfPaidPct?: Decimal;
  /** What goes on the plate: as served, else as cooked. */
  readonly of: 'served' | 'cooked';
  readonly servedGrams?: Grams;
  readonly servedOfRawPct?: Decimal;
  readonly servedOfPaidPct?: Decimal;
  /** Net cost ÷ served weight, credits kept as they were; and a served portion, where they were counted. */
  readonly servedCostPerLb?: PerLb;
  readonly servedPortionCost?: Money;
  readonly servedPortionGrams?: Grams;
}

/** What the pan left of the portions of a test; undefined where nothing cooked was weighed. */
export function cookingFigures(
  { cookedGrams, servedGrams: plated }: Pick<Test, 'cookedGrams' | 'servedGrams'>,
  figures: Figures,
): CookingFigures | undefined {
  const servedGrams = plated ?? cookedGrams;
  if (servedGrams === undefined) return undefined;
  const { portions, receivedGrams } = figures;
  const ofPaid = (grams: Grams): Decimal => grams.times(HUNDRED).div(receivedGrams);
  const ofRaw = (grams: Grams): Decimal | undefined => portions && grams.times(HUNDRED).div(portions.grams);
  const lossGrams = cookedGrams && portions?.grams.minus(cookedGrams);
  return {
    lossGrams,
    lossOfRawPct: lossGrams && ofRaw(lossGrams),
    lossOfPaidPct: lossGrams && ofPaid(lossGrams),
    of: plated === undefined ? 'cooked' : 'served',
    servedGrams,
    servedOfRawPct: ofRaw(servedGrams),
    servedOfPaidPct: ofPaid(servedGrams),
    ...servedCosts(figures, servedGrams),
  };
}

function servedCosts(
  { purchaseCost, creditTotal, portions, overweight }: Figures,
  servedGrams: Grams,
): Pick<CookingFigures, 'servedCostPerLb' | 'servedPortionCost' | 'servedPortionGrams'> {
  const count = portions?.count;
  const servedPortionGrams = count === undefined ? undefined : servedGrams.div(count);
  if (purchaseCost === undefined || overweight || portions === undefined) return { servedPortionGrams };
  const net = purchaseCost.minus(creditTotal);
  return {
    servedPortionGrams,
    servedCostPerLb: perLbOf(net, servedGrams),
    servedPortionCost: count === undefined ? undefined : net.div(count),
  };
}

// One piece, several products that are sold: what the piece costs is shared among them by what each would bring, beside the residual
// method, in which all but the portions are credited and the portions carry the rest.
import { type Decimal, sum, ZERO } from './decimal.ts';
import type { Figures } from './figures.ts';
import { costOf, type Money, type PerLb, perLbOf } from './money.ts';
import type { Grams } from './quantity.ts';
import { shareOut } from './share-out.ts';
import { PORTIONS, type Test } from './test.ts';

export interface Product {
  /** The name of the part; `portions` for those. */
  readonly part: string;
  readonly grams: Grams;
  readonly valuePerLb: PerLb;
  /** What it carries of the cost, to the cent. */
  readonly share: Money;
  readonly usableCostPerLb: PerLb;
  readonly costFactor: Decimal;
}

export interface ByValue {
  /** What is shared: the purchase less what the other by-products are worth. */
  readonly jointCost: Money;
  readonly products: readonly Product[];
}

/** Why a cost can't be shared by value. */
export type SharingGap = 'price' | 'products' | 'value' | 'balance';

/** The cost by value; the market value of the portions is the ready-cut price. The shares add up to the joint cost, rounded to the cent. */
export function shareByValue(
  test: Test,
  figures: Figures,
  readyCutPerLb: PerLb | undefined,
): ByValue | SharingGap {
  const { purchaseCost, pricePerLb, portions } = figures;
  const sold = figures.parts.filter(({ part }) => test.products.includes(part));
  if (sold.length === 0) return 'products';
  if (figures.overweight) return 'balance';
  if (purchaseCost === undefined || pricePerLb === undefined || pricePerLb.lte(ZERO)) return 'price';
  const valued = [
    ...sold.map(({ part, grams, creditPerLb }) => ({ part, grams, valuePerLb: creditPerLb })),
    ...(portions === undefined ? [] : [{ part: PORTIONS, grams: portions.grams, valuePerLb: readyCutPerLb }]),
  ].flatMap(({ valuePerLb, ...of }) => (valuePerLb?.gt(ZERO) === true ? [{ ...of, valuePerLb }] : []));
  if (valued.length < sold.length + (portions === undefined ? 0 : 1)) return 'value';
  if (valued.length < 2) return 'products';
  const jointCost = purchaseCost.minus(figures.creditTotal).plus(sum(sold.map(({ value }) => value)));
  if (jointCost.lte(ZERO)) return 'price';
  const shares = shareOut(
    jointCost,
    valued.map(({ grams, valuePerLb }) => costOf(grams, valuePerLb)),
  );
  const products = valued.map((each, at) => {
    const share = shares[at] ?? ZERO;
    const usableCostPerLb = perLbOf(share, each.grams);
    return { ...each, share, usableCostPerLb, costFactor: usableCostPerLb.div(pricePerLb) };
  });
  return { jointCost, products };
}

// The figures of a worked example under the labels that its data file uses.
import type { CostsPerLb } from '../../src/core/costs.ts';
import { decimal, type Decimal, roundUp } from '../../src/core/decimal.ts';
import { type Figures, sumsOf } from '../../src/core/figures.ts';
import { costOf, perLbFrom, perLbOf, perUnit } from '../../src/core/money.ts';
import { gramsToBuy, menuPrice, portionsFrom } from '../../src/core/order.ts';
import { type Pool, poolFigures } from '../../src/core/pool.ts';
import { fromGrams } from '../../src/core/quantity.ts';
import { usableCostInterval, yieldInterval } from '../../src/core/sureness.ts';
import type { Verdict } from '../../src/core/verdict.ts';
import { weight } from './given.ts';

/** What was asked of a case beside its weights. */
export interface Asked {
  readonly price?: string;
  readonly portions?: { readonly each?: string };
  readonly order?: { readonly count: string; readonly each: string };
  readonly 'food cost %'?: string;
  readonly 'new price'?: string;
}

export interface Solved {
  readonly test?: Figures;
  readonly verdict: Verdict;
  readonly pool: Pool;
  readonly given: Asked;
}

/** "7.40/lb" or "11.95/kg", per pound. */
export function priceOf(text = ''): Decimal {
  const [amount = '', unit] = text.split('/');
  if (unit !== 'lb' && unit !== 'kg' && unit !== 'oz') throw new Error(`no price: ${text}`);
  return perLbFrom(decimal(amount), unit);
}

/** The figure that a label names. Throws on a label that nothing computes, so that no line of the data goes unchecked. */
export function valueOf(solved: Solved, label: string): unknown {
  const figure = FIGURES[label];
  if (figure === undefined) throw new Error(`nothing computes ${JSON.stringify(label)}`);
  const { pool, given, test } = solved;
  const pooled = poolFigures(pool, {
    pricePerLb: given.price === undefined ? undefined : priceOf(given.price),
  });
  return figure({
    ...solved,
    pooled,
    costs: test?.costs,
    anyCosts: test?.costs ?? pooled?.costs,
    provisional: test?.provisional,
  });
}

interface Found extends Solved {
  readonly pooled: ReturnType<typeof poolFigures>;
  readonly costs: Figures['costs'];
  /** Of the test, or where there is none, pooled. */
  readonly anyCosts: CostsPerLb | undefined;
  readonly provisional: Figures['provisional'];
}

const FIGURES: Readonly<Record<string, (found: Found) => unknown>> = {
  'yield %': ({ test }) => ({ ...byPart(test, 'yieldPct'), portions: test?.portions?.yieldPct }),
  worth: ({ test }) => byPart(test, 'value'),
  role: ({ test }) => byPart(test, 'role'),
  'purchase cost': ({ test }) => test?.purchaseCost,
  'price per lb': ({ test }) => test?.pricePerLb,
  'by-products': ({ test }) => test?.creditTotal,
  'net cost': ({ test }) => test?.purchaseCost?.minus(test.creditTotal),
  'unaccounted lb': ({ test }) => test && fromGrams(test.unaccountedGrams, 'lb'),
  'unaccounted %': ({ test }) => test?.unaccountedPct,
  'portion weight lb': ({ test }) => test?.portions && fromGrams(test.portions.grams, 'lb'),
  'portion weight from': ({ test }) => test?.portions?.basis,
  'mean portion oz': ({ test }) => test?.portions?.meanGrams && fromGrams(test.portions.meanGrams, 'oz'),
  'usable cost per lb': ({ anyCosts }) => anyCosts?.usableCostPerLb,
  'usable cost per oz': ({ anyCosts }) => anyCosts && perUnit(anyCosts.usableCostPerLb, 'oz'),
  'usable cost per kg': ({ anyCosts }) => anyCosts && perUnit(anyCosts.usableCostPerLb, 'kg'),
  'cost factor': ({ costs }) => costs?.costFactor,
  'portion factor': (found) => portionFactor(found),
  'factor × new price': ({ costs, given }) => costs?.costFactor.times(priceOf(given['new price'])),
  'portion factor × new price': (found) => portionFactor(found)?.times(priceOf(found.given['new price'])),
  'portion cost': ({ costs }) => costs?.portionCost,
  'mean portion cost': ({ costs }) => costs?.meanPortionCost,
  'given away per portion': ({ costs }) => costs?.giveawayPerPortion,
  'labor cost': ({ test }) => test?.labor.cost,
  'labor per usable lb': ({ test }) =>
    test?.portions && test.labor.cost && perLbOf(test.labor.cost, test.portions.grams),
  'packing cost': ({ test }) => test?.packingCost,
  'loaded cost per lb': ({ anyCosts }) => anyCosts?.loadedCostPerLb,
  'loaded portion cost': ({ costs }) => costs?.loadedPortionCost,
  'compared cost per lb': ({ anyCosts }) => anyCosts?.comparedCostPerLb,
  overweight: ({ test }) => (test?.overweight === true ? 'yes' : 'no'),
  'provisional portion weight lb': ({ provisional }) =>
    provisional && fromGrams(provisional.portionGrams, 'lb'),
  'provisional usable cost per lb': ({ provisional }) => provisional?.costs.usableCostPerLb,
  choice: ({ verdict }) => verdict.choice,
  'saving per lb': ({ verdict }) => verdict.savingPerLb,
  'saving per portion': ({ verdict }) => verdict.savingPerPortion,
  'per portion it is the other way round': ({ verdict }) => (verdict.portionContradicts ? 'yes' : 'no'),
  'turns at purchase price': ({ verdict }) => verdict.breakEvenPricePerLb,
  'turns at ready-cut price': ({ verdict }) => verdict.breakEvenReadyCutPerLb,
  'turns at yield %': ({ verdict }) => verdict.breakEvenYieldPct,
  counted: ({ verdict }) => verdict.counted,
  'left out': ({ verdict }) => verdict.leftOut,
  missing: ({ verdict }) => verdict.missing,
  tests: ({ verdict }) => verdict.tests,
  'pooled yield %': ({ pooled }) => pooled?.yieldPct,
  'mean yield %': ({ pooled }) => pooled?.meanYieldPct,
  'yield deviation': ({ pooled }) => pooled?.yieldDeviationPct,
  '90 % interval of the yield': ({ pool }) => yieldInterval(pool),
  '90 % interval of the usable cost': ({ pool, given }) => usableCostInterval(pool, priceOf(given.price)),
  'saving per test': ({ verdict, pool }) =>
    verdict.savingPerLb && costOf(pool.portionGrams, verdict.savingPerLb).div(pool.tests),
  'with labor counted the other way': ({ verdict }) => verdict.otherLabor?.choice ?? 'the same',
  'to buy lb': (found) => toBuy(found, 'lb'),
  'to buy lb, rounded up to a tenth': (found) => roundUp(toBuy(found, 'lb'), 1),
  'to buy kg': (found) => toBuy(found, 'kg'),
  'whole portions in the weight': ({ given, test }) =>
    test?.portions && portionsFrom(test.portions.grams, weight(given.portions?.each ?? '')),
  'menu price': ({ costs, given }) =>
    costs?.portionCost && menuPrice(costs.portionCost, decimal(given['food cost %'] ?? '')),
};

const byPart = <Key extends keyof Figures['parts'][number]>(test: Figures | undefined, key: Key) =>
  Object.fromEntries(test?.parts.map((part) => [part.part, part[key]]) ?? []);

const portionFactor = ({ test, costs }: Found): Decimal | undefined =>
  test?.pricePerLb && costs?.portionCost?.div(test.pricePerLb);

function toBuy({ given, pool, test }: Solved, unit: 'lb' | 'kg'): Decimal {
  const { order } = given;
  if (order === undefined) throw new Error('nothing is ordered');
  const sums = test?.portions ? sumsOf(test, test.portions.grams) : pool;
  return fromGrams(gramsToBuy({ ...sums, count: Number(order.count), eachGrams: weight(order.each) }), unit);
}

// What the portions of a test weigh, from whatever was said of them: a list, a total, a sample, or only count and size.
import { HUNDRED, type Decimal, sum, ZERO } from './decimal.ts';
import type { Grams } from './quantity.ts';
import { type Batch, countOf, type Portions } from './test.ts';

/** How the portion weight was found, best first: a list of weights, a weighed total, a sample × count, count × target. */
export type PortionBasis = 'list' | 'total' | 'sample' | 'nominal';

export interface PortionFigures {
  /** As counted; the length of the list where that is the portion weight. */
  readonly count?: number;
  /** The size asked for, where all batches have the same. */
  readonly targetGrams?: Grams;
  readonly grams: Grams;
  readonly basis: PortionBasis;
  /** The weight of one portion as cut: weighed total ÷ count, or the mean of the list; absent where none was weighed. */
  readonly meanGrams?: Grams;
  readonly yieldPct: Decimal;
  /** How many single weights were listed. */
  readonly listed: number;
}

/** The portions of a test, the yield on the weight received (above 0); undefined where their weight can't be known. */
export function portionFigures(portions: Portions, receivedGrams: Grams): PortionFigures | undefined {
  const weight = portionWeight(portions);
  if (weight === undefined || weight.grams.lte(ZERO)) return undefined;
  const count = weight.basis === 'list' ? portions.list.length : countOf(portions);
  return {
    ...weight,
    count,
    targetGrams: commonSize(portions.batches),
    meanGrams: meanPortion(portions, weight, count),
    yieldPct: weight.grams.times(HUNDRED).div(receivedGrams),
    listed: portions.list.length,
  };
}

interface PortionWeight {
  readonly grams: Grams;
  readonly basis: PortionBasis;
}

/** The portion weight by the best basis there is. A list as long as the count (or longer) is the weight; a shorter one a sample. */
function portionWeight(portions: Portions): PortionWeight | undefined {
  const { list, grams } = portions;
  const count = countOf(portions);
  if (list.length > 0 && (count === undefined || list.length >= count))
    return { grams: sum(list), basis: 'list' };
  if (grams !== undefined) return { grams, basis: 'total' };
  // Multiplied before it is divided, so that a sample that comes out even stays exact.
  if (list.length > 0 && count !== undefined)
    return { grams: sum(list).times(count).div(list.length), basis: 'sample' };
  const nominal = nominalWeight(portions.batches);
  return nominal === undefined ? undefined : { grams: nominal, basis: 'nominal' };
}

/** Σ count × size of what was counted; undefined where a counted batch has no size, or nothing was counted. */
function nominalWeight(batches: readonly Batch[]): Grams | undefined {
  let total: Grams | undefined;
  for (const { count, eachGrams } of batches) {
    if (count === undefined) continue;
    if (eachGrams === undefined) return undefined;
    total = (total ?? ZERO).plus(eachGrams.times(count));
  }
  return total;
}

/** The size of all batches, where they have the same. */
export function commonSize(batches: readonly Batch[]): Grams | undefined {
  const size = batches[0]?.eachGrams;
  return size !== undefined && batches.every(({ eachGrams }) => eachGrams?.eq(size)) ? size : undefined;
}

/** Where all were weighed together, that total tells the mean of all; a few listed ones only tell their own. */
function meanPortion(
  { list }: Portions,
  weight: PortionWeight,
  count: number | undefined,
): Grams | undefined {
  if (weight.basis === 'total') return count !== undefined && count > 0 ? weight.grams.div(count) : undefined;
  return list.length > 0 ? sum(list).div(list.length) : undefined;
}

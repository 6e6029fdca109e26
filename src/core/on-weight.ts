// Whether portions are on weight: how many of a list lie within the kitchen's tolerance, what those above their size give
// away, and whether the hand is steady enough for the tolerance.
import { decimal, type Decimal, sum, ZERO } from './decimal.ts';
import type { Grams } from './quantity.ts';
import { toGrams } from './quantity.ts';
import { mean, sampleDeviation } from './statistics.ts';

export interface OnWeight {
  readonly meanGrams: Grams;
  /** n − 1; absent for one portion. */
  readonly deviationGrams?: Grams;
  readonly toleranceGrams: Grams;
  /** Below target − tolerance, and above target + tolerance. */
  readonly under: number;
  readonly over: number;
  readonly listed: number;
  /** Σ of what each portion has above the target; the light ones give nothing back. */
  readonly overGrams: Grams;
  /** (2 × tolerance) ÷ 6 s, and the distance of the mean to the nearer limit ÷ 3 s (NIST e-Handbook 6.1.6); absent without a spread. */
  readonly cp?: Decimal;
  readonly cpk?: Decimal;
}

/** What a list of at least one weight says against a size. */
export function onWeight(list: readonly Grams[], targetGrams: Grams, toleranceGrams: Grams): OnWeight {
  const meanGrams = mean(list) ?? ZERO;
  const deviationGrams = sampleDeviation(list);
  const low = targetGrams.minus(toleranceGrams);
  const high = targetGrams.plus(toleranceGrams);
  return {
    meanGrams,
    deviationGrams,
    toleranceGrams,
    under: list.filter((each) => each.lt(low)).length,
    over: list.filter((each) => each.gt(high)).length,
    listed: list.length,
    overGrams: sum(list.map((each) => (each.gt(targetGrams) ? each.minus(targetGrams) : ZERO))),
    ...capability({ low, high }, { meanGrams, deviationGrams }),
  };
}

const [THREE, SIX] = [decimal('3'), decimal('6')];

/** Cp and Cpk between two limits; nothing where there is no spread. */
export function capability(
  { low, high }: { readonly low: Decimal; readonly high: Decimal },
  { meanGrams, deviationGrams }: { readonly meanGrams: Decimal; readonly deviationGrams?: Decimal },
): Pick<OnWeight, 'cp' | 'cpk'> {
  if (deviationGrams === undefined || deviationGrams.isZero()) return {};
  const [above, below] = [high.minus(meanGrams), meanGrams.minus(low)];
  const nearer = above.lt(below) ? above : below;
  return { cp: high.minus(low).div(deviationGrams.times(SIX)), cpk: nearer.div(deviationGrams.times(THREE)) };
}

/**
 * By how much a portion may be off where the kitchen has not said: the steps in which meat is bought by the portion in institutional
 * specifications (from memory, IMPS general requirements): up to 6 oz a quarter ounce, to 12 oz a half, to 18 oz three quarters, above 1 oz.
 */
const STEPS: readonly (readonly [below: Grams, tolerance: Grams])[] = (
  [['6', '0.25'], ['12', '0.5'], ['18', '0.75']] as const
).map(([below, tolerance]) => [toGrams(decimal(below), 'oz'), toGrams(decimal(tolerance), 'oz')]); // prettier-ignore
const WIDEST: Grams = toGrams(decimal('1'), 'oz');

/** The tolerance of a size: the kitchen's own, else by the steps. */
export const toleranceOf = (targetGrams: Grams, own: Grams | undefined): Grams =>
  own ?? STEPS.find(([below]) => targetGrams.lt(below))?.[1] ?? WIDEST;

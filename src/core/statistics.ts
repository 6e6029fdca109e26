// Mean, spread and how sure a mean is, for the few tests that a kitchen makes of a cut.
import { decimal, type Decimal, ONE, sum, ZERO } from './decimal.ts';

/** The mean; undefined for no values. */
export const mean = (values: readonly Decimal[]): Decimal | undefined =>
  values.length === 0 ? undefined : sum(values).div(values.length);

/** The sample standard deviation (n − 1), by squared distances from the mean; undefined for fewer than two values. */
export function sampleDeviation(values: readonly Decimal[]): Decimal | undefined {
  const middle = mean(values);
  if (middle === undefined || values.length < 2) return undefined;
  const squares = sum(values.map((value) => value.minus(middle).pow(2)));
  return squares.div(values.length - 1).sqrt();
}

/** What is kept of values that are not kept themselves. */
export interface Moments {
  readonly count: number;
  readonly total: Decimal;
  readonly squares: Decimal;
}

/**
 * The sample standard deviation from exact sums: √((Σx² − (Σx)² ÷ n) ÷ (n − 1)); undefined for fewer than two values.
 * The difference of two large sums is a trap with floats; with 40 digits it is harmless, and never below 0 here.
 */
export function deviationOf({ count, total, squares }: Moments): Decimal | undefined {
  if (count < 2) return undefined;
  const spread = squares.minus(total.pow(2).div(count));
  return (spread.lt(ZERO) ? ZERO : spread).div(count - 1).sqrt();
}

/** Student's t at 0.95 (one-sided; two-sided 90 %), df 1 to 30, to 12 places: two libraries agree on each. */
const T_95 = [
  '6.313751514675', '2.919985580354', '2.353363434802', '2.131846786327', '2.015048373333', '1.943180280515',
  '1.894578605090', '1.859548037531', '1.833112932656', '1.812461122812', '1.795884818704', '1.782287555649',
  '1.770933395987', '1.761310135775', '1.753050355693', '1.745883676276', '1.739606726075', '1.734063606618',
  '1.729132811521', '1.724718242921', '1.720742902812', '1.717144374380', '1.713871527747', '1.710882079909',
  '1.708140761252', '1.705617919759', '1.703288445722', '1.701130934266', '1.699127026534', '1.697260886594',
].map(decimal); // prettier-ignore

/** The same at 0.90 (one-sided). */
const T_90 = [
  '3.077683537175', '1.885618083164', '1.637744353696', '1.533206274059', '1.475884048824', '1.439755747265',
  '1.414923927651', '1.396815309744', '1.383028738397', '1.372183641110', '1.363430318021', '1.356217334023',
  '1.350171288780', '1.345030374455', '1.340605607850', '1.336757167327', '1.333379389722', '1.330390943570',
  '1.327728209027', '1.325340706985', '1.323187873865', '1.321236741613', '1.319460239816', '1.317835933673',
  '1.316345072674', '1.314971864271', '1.313702912829', '1.312526781593', '1.311433647302', '1.310415025391',
].map(decimal); // prettier-ignore

/** The standard normal quantiles at 0.95 and 0.90. */
const Z_95 = decimal('1.644853626951472714863848907991633');
const Z_90 = decimal('1.281551565544600466965103329448743');

/** The 0.95 and the 0.90 quantile of Student's t for n − 1 degrees of freedom (at least 1). */
export const tQuantile95 = (degreesOfFreedom: number): Decimal => quantile(T_95, Z_95, degreesOfFreedom);
export const tQuantile90 = (degreesOfFreedom: number): Decimal => quantile(T_90, Z_90, degreesOfFreedom);

/**
 * From the table up to 30, above by the expansion of Abramowitz & Stegun, Handbook of Mathematical Functions, 26.7.5
 * (right to better than 1e-8 there).
 */
function quantile(table: readonly Decimal[], normal: Decimal, degreesOfFreedom: number): Decimal {
  if (!Number.isInteger(degreesOfFreedom) || degreesOfFreedom < 1)
    throw new Error(`degrees of freedom must be a whole number from 1: ${degreesOfFreedom}`);
  return table[degreesOfFreedom - 1] ?? expansion(normal, degreesOfFreedom);
}

/** The terms in 1/ν to 1/ν⁴: the coefficients of z⁹, z⁷, z⁵, z³, z, and what they are divided by. */
const TERMS: readonly (readonly [readonly number[], number])[] = [
  [[0, 0, 0, 1, 1], 4],
  [[0, 0, 5, 16, 3], 96],
  [[0, 3, 19, 17, -15], 384],
  [[79, 776, 1482, -1920, -945], 92160],
];

function expansion(normal: Decimal, degreesOfFreedom: number): Decimal {
  const square = normal.pow(2);
  let total = normal;
  let power = ONE;
  for (const [coefficients, divisor] of TERMS) {
    power = power.div(degreesOfFreedom);
    // Horner's scheme in z², from z⁹ down.
    const polynomial = coefficients.reduce(
      (value, coefficient) => value.times(square).plus(coefficient),
      ZERO,
    );
    total = total.plus(polynomial.times(normal).times(power).div(divisor));
  }
  return total;
}

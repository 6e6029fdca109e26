// Is a weight so far outside what a part usually comes to that a decimal point was likely lost or moved? Asked only where
// three things meet: it is several times what was found before, it is far beyond the spread of that, and moved by one place
// it would be ordinary. A heavy piece, a fat one, a cutter who trims hard: none of them is ten times off.
import { decimal, type Decimal, HUNDRED } from './decimal.ts';
import { type Pool, poolFigures } from './pool.ts';
import type { Grams } from './quantity.ts';
import { ENOUGH_TESTS } from './sureness.ts';

/** In percent of the weight received, what a part usually comes to. */
export interface Band {
  readonly lowPct: Decimal;
  readonly highPct: Decimal;
}
/** By part; only of parts that are alike on every cut. */
export type Bands = ReadonlyMap<string, Band>;

export interface Slip {
  /** What was likely meant. */
  readonly grams: Grams;
  /** What the part usually comes to: the mean of its tests, or the middle of the band. */
  readonly usualPct: Decimal;
}

export interface Weighing {
  readonly grams: Grams;
  readonly receivedGrams: Grams;
  readonly history: Pool | undefined;
  readonly band: Band | undefined;
}

/** How many times the usual share is far, and how many standard deviations of the tests. */
const FAR = decimal('5');
const FAR_DEVIATIONS = decimal('6');
/** Before there is history: so many times the upper end of the band. */
const FAR_FROM_BAND = decimal('3');
/** How near to the usual the likely meaning must be, either way. */
const NEAR = decimal('2.5');
const PLACE = decimal('10');

/** The likely meaning of a weight that is far outside; undefined where it may well be right, or nothing is known. */
export function slipOf({ grams, receivedGrams, history, band }: Weighing): Slip | undefined {
  const pct = grams.times(HUNDRED).div(receivedGrams);
  const usual = history === undefined || history.tests < ENOUGH_TESTS ? undefined : poolFigures(history, {});
  if (usual !== undefined) return slipFrom(grams, pct, usual);
  if (band === undefined || pct.lte(band.highPct.times(FAR_FROM_BAND))) return undefined;
  const meant = pct.div(PLACE);
  if (meant.gt(band.highPct) || meant.lt(band.lowPct.div(2))) return undefined;
  return { grams: grams.div(PLACE), usualPct: band.lowPct.plus(band.highPct).div(2) };
}

interface Usual {
  readonly meanYieldPct: Decimal;
  readonly yieldDeviationPct?: Decimal;
}

function slipFrom(
  grams: Grams,
  pct: Decimal,
  { meanYieldPct: mean, yieldDeviationPct }: Usual,
): Slip | undefined {
  const spread = yieldDeviationPct?.times(FAR_DEVIATIONS) ?? decimal('0');
  const isNear = (meant: Decimal): boolean => meant.gte(mean.div(NEAR)) && meant.lte(mean.times(NEAR));
  if (pct.gt(mean.times(FAR)) && pct.gt(mean.plus(spread)) && isNear(pct.div(PLACE)))
    return { grams: grams.div(PLACE), usualPct: mean };
  if (pct.lt(mean.div(FAR)) && pct.lt(mean.minus(spread)) && isNear(pct.times(PLACE)))
    return { grams: grams.times(PLACE), usualPct: mean };
  return undefined;
}

/** Eight times or an eighth of the price before: markets move, but not by a decimal place. */
const FAR_PRICE = decimal('8');

export const isFarPrice = (perLb: Decimal, before: Decimal | undefined): boolean =>
  before?.gt(0) === true && (perLb.gte(before.times(FAR_PRICE)) || perLb.lte(before.div(FAR_PRICE)));

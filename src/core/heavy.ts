// Whether portions run heavy over some weeks: what a closed test leaves of its portions, and what several such rows come to.
import { type CostSettings, figures } from './figures.ts';
import { decimal, type Decimal, HUNDRED, sum, ZERO } from './decimal.ts';
import { costOf, type Money } from './money.ts';
import { type OnWeight, onWeight, toleranceOf } from './on-weight.ts';
import type { Grams } from './quantity.ts';
import type { Test } from './test.ts';

interface ToleranceSettings extends CostSettings {
  readonly portionTolerance?: Grams;
}

/** The list of a test against its size; undefined without either. */
export function testOnWeight(test: Test, settings: ToleranceSettings): OnWeight | undefined {
  const targetGrams = figures(test, settings).portions?.targetGrams;
  const { list } = test.portions;
  if (targetGrams === undefined || list.length === 0) return undefined;
  return onWeight(list, targetGrams, toleranceOf(targetGrams, settings.portionTolerance));
}

/** What is kept of the portions of a closed test: sums over those that were weighed, singly or together. */
export interface PortionRow {
  readonly closedAt: string;
  readonly targetGrams: Grams;
  /** How many the mean is of, and how many there are. */
  readonly weighed: number;
  readonly count: number;
  readonly meanGrams: Grams;
  /** Of those that were weighed singly. */
  readonly listed: number;
  readonly under: number;
  readonly over: number;
  /** Σ of what lies above the size; of portions weighed together only what their mean has. */
  readonly overGrams: Grams;
  readonly usableCostPerLb?: Decimal;
}

export type StoredPortions = Readonly<Record<string, string>>;

/** The row of a test as plain figures; empty where no portion was weighed against a size. */
export function portionRow(test: Test, settings: ToleranceSettings): StoredPortions {
  const { portions } = figures(test, settings);
  const { targetGrams, meanGrams, count } = portions ?? {};
  if (targetGrams === undefined || meanGrams === undefined || count === undefined) return {};
  const listed = testOnWeight(test, settings);
  const above = meanGrams.gt(targetGrams) ? meanGrams.minus(targetGrams).times(count) : ZERO;
  const whole = {
    weighed: listed?.listed ?? count,
    count,
    listed: listed?.listed ?? 0,
    under: listed?.under ?? 0,
    over: listed?.over ?? 0,
  };
  const weights = {
    targetGrams,
    meanGrams: listed?.meanGrams ?? meanGrams,
    overGrams: listed?.overGrams ?? above,
  };
  const entries = [...Object.entries(whole), ...Object.entries(weights)];
  return Object.fromEntries(entries.map(([key, value]) => [key, value.toString()]));
}

/** A row as it was stored; undefined for a test whose portions were not weighed against a size. */
export function readPortionRow(closedAt: string, stored: StoredPortions): PortionRow | undefined {
  const { targetGrams, meanGrams, overGrams, usableCostPerLb } = stored;
  if (targetGrams === undefined || meanGrams === undefined || overGrams === undefined) return undefined;
  const whole = (key: string): number => Number(stored[key] ?? 0);
  return {
    closedAt,
    targetGrams: decimal(targetGrams),
    meanGrams: decimal(meanGrams),
    overGrams: decimal(overGrams),
    ...{
      weighed: whole('weighed'),
      count: whole('count'),
      listed: whole('listed'),
      under: whole('under'),
      over: whole('over'),
    },
    usableCostPerLb: usableCostPerLb === undefined ? undefined : decimal(usableCostPerLb),
  };
}

export interface Heaviness {
  readonly tests: number;
  readonly portions: number;
  readonly listed: number;
  readonly under: number;
  readonly over: number;
  /** What a portion weighs above its size, in the mean over all that were weighed; and as a share of the size. */
  readonly offGrams: Grams;
  readonly offPct: Decimal;
  /** What the weight above the size cost; absent where no test has a cost. */
  readonly givenAway?: { readonly perPortion: Money; readonly perTest: Money; readonly perWeek: Money };
}

const DAY_MS = 24 * 60 * 60 * 1000;
const WEEK_DAYS = 7;
/** How far back "the last weeks" go. */
export const WEEKS_LOOKED_AT = 4;

/** The rows of the last weeks; undefined where there are none. */
export function heaviness(rows: readonly PortionRow[], now: string): Heaviness | undefined {
  const since = Date.parse(now) - WEEKS_LOOKED_AT * WEEK_DAYS * DAY_MS;
  const recent = rows.filter(({ closedAt }) => Date.parse(closedAt) >= since);
  if (recent.length === 0) return undefined;
  const total = (of: (row: PortionRow) => number): number => recent.reduce((all, row) => all + of(row), 0);
  const weighed = total((row) => row.weighed);
  const off = sum(recent.map((row) => row.meanGrams.minus(row.targetGrams).times(row.weighed)));
  const sizes = sum(recent.map((row) => row.targetGrams.times(row.weighed)));
  return {
    tests: recent.length,
    portions: total((row) => row.count),
    listed: total((row) => row.listed),
    under: total((row) => row.under),
    over: total((row) => row.over),
    offGrams: off.div(weighed),
    offPct: off.times(HUNDRED).div(sizes),
    givenAway: givenAway(recent, now),
  };
}

/** A list that is a sample stands for all portions of its test. Tests without a cost are left out of all three. */
function givenAway(rows: readonly PortionRow[], now: string): Heaviness['givenAway'] {
  const costed = rows.flatMap(({ usableCostPerLb, ...row }) =>
    usableCostPerLb === undefined ? [] : [{ ...row, usableCostPerLb }],
  );
  if (costed.length === 0) return undefined;
  const total = sum(
    costed.map(({ overGrams, weighed, count, usableCostPerLb }) =>
      costOf(overGrams.times(count).div(weighed), usableCostPerLb),
    ),
  );
  const count = costed.reduce((all, row) => all + row.count, 0);
  return {
    perPortion: total.div(count),
    perTest: total.div(costed.length),
    perWeek: total.div(weeksOf(costed, now)),
  };
}

/** From the first of the tests until now; a week at least, so that one busy day is not taken for seven. */
function weeksOf(rows: readonly PortionRow[], now: string): Decimal {
  const first = Math.min(...rows.map(({ closedAt }) => Date.parse(closedAt)));
  const days = Math.max(WEEK_DAYS, Math.ceil((Date.parse(now) - first) / DAY_MS));
  return decimal(days.toString()).div(WEEK_DAYS);
}

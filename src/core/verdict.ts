// Cut or buy ready-cut? Compared per usable pound, with what would turn it and how sure it is.
// Formulas: docs/calculations.md. Labour counts only where it is avoidable, as in any make-or-buy decision.
import { type Break, breakEven } from './break-even.ts';
import { type Choice, choose, isNothing } from './choice.ts';
import type { Sums } from './costs.ts';
import { type Decimal, ZERO } from './decimal.ts';
import { type Figures, sumsOf } from './figures.ts';
import { costOf, type Money, type PerLb } from './money.ts';
import { otherLabor, type OtherLabor, withLabor } from './other-labor.ts';
import { type Pool, poolFigures } from './pool.ts';
import type { Grams } from './quantity.ts';

/** What a verdict can't do without. `balance`: more was weighed than received; `tests`: no closed test of the item. */
export type VerdictGap = 'readyCut' | 'price' | 'portions' | 'balance' | 'tests';

/** `fixedLabor` is paid anyway; for `laborWithoutRate` minutes were said and no rate is known. */
export type CostKind = 'credits' | 'labor' | 'packing' | 'fixedLabor' | 'laborWithoutRate';

/** With the three turning points (see Break), each as soon as what it needs is known. */
export interface Verdict extends Break {
  readonly choice: Choice;
  /** Why it is unknown; else empty. */
  readonly missing: readonly VerdictGap[];
  /** How many closed tests stand behind it; a test with no closed one to its side counts as 1. */
  readonly tests: number;
  readonly readyCutPerLb?: PerLb;
  /** The yield that the break-even yield is held against: of the test, or pooled. */
  readonly yieldPct?: Decimal;
  readonly counted: readonly CostKind[];
  readonly leftOut: readonly CostKind[];
  /** A portion of target size at the ready-cut price − the mean portion as cut, where both sizes are known. */
  readonly savingPerPortion?: Money;
  /** What the answer would be if labour counted the other way; absent where it would be the same. */
  readonly otherLabor?: OtherLabor;
  /** The portions as cut are so far off target that the answer per portion is the opposite one. */
  readonly portionContradicts: boolean;
}

export interface TestQuestion {
  readonly figures: Figures;
  readonly readyCutPerLb?: PerLb;
  /** Of the closed tests of the item, this one included once it is closed. */
  readonly pool: Pool;
}

/** The verdict of one test, by its own price, credits, labour and packing. */
export function testVerdict({ figures, readyCutPerLb, pool }: TestQuestion): Verdict {
  const { portions, overweight, pricePerLb, purchaseCost } = figures;
  const sums = portions === undefined || overweight ? undefined : sumsOf(figures, portions.grams);
  const gaps: VerdictGap[] = portions === undefined ? ['portions'] : [];
  if (overweight) gaps.push('balance');
  const verdict = judge({
    sums,
    pricePerLb,
    purchaseCost,
    readyCutPerLb,
    pool,
    gaps,
    yieldPct: sums && portions?.yieldPct,
  });
  const savingPerPortion = portionSaving(portions, verdict);
  const isRateMissing = figures.labor.minutes !== undefined && figures.labor.cost === undefined;
  return {
    ...verdict,
    ...inventory(sumsOf(figures, ZERO), isRateMissing),
    tests: Math.max(pool.tests, 1),
    savingPerPortion,
    portionContradicts: isOpposite(verdict.savingPerLb, savingPerPortion),
  };
}

export interface ItemQuestion {
  readonly pool: Pool;
  /** The purchase price to judge at. */
  readonly pricePerLb?: PerLb;
  readonly readyCutPerLb?: PerLb;
  /** As the kitchen sees it now, whatever it was when the tests were closed; left out, as it was then. */
  readonly laborAvoidable?: boolean;
  /** The size last cut, and what a portion of it weighs of late. */
  readonly portion?: PortionAsCut;
}

export interface PortionAsCut {
  readonly targetGrams?: Grams;
  readonly meanGrams?: Grams;
}

/** The verdict of an item, by its pooled closed tests at one purchase price; credits, labour and packing held as they were. */
export function itemVerdict({
  pool: all,
  pricePerLb,
  readyCutPerLb,
  laborAvoidable,
  portion,
}: ItemQuestion): Verdict {
  const pool = laborAvoidable === undefined ? all : withLabor(all, laborAvoidable);
  const pooled = poolFigures(pool, { pricePerLb });
  const sums = pooled && pool;
  const purchaseCost = pricePerLb && costOf(pool.receivedGrams, pricePerLb);
  const gaps: VerdictGap[] = pooled === undefined ? ['tests'] : [];
  const verdict = judge({
    sums,
    pricePerLb,
    purchaseCost,
    readyCutPerLb,
    pool,
    gaps,
    yieldPct: pooled?.yieldPct,
  });
  const savingPerPortion = portionSaving(portion, verdict);
  return {
    ...verdict,
    ...inventory(pool, false),
    tests: pool.tests,
    savingPerPortion,
    portionContradicts: isOpposite(verdict.savingPerLb, savingPerPortion),
  };
}

interface Case {
  /** Undefined where there is nothing sound to compare; then the gaps say why. */
  readonly sums?: Sums;
  readonly pricePerLb?: PerLb;
  readonly purchaseCost?: Money;
  readonly readyCutPerLb?: PerLb;
  readonly yieldPct?: Decimal;
  readonly pool: Pool;
  readonly gaps: readonly VerdictGap[];
}

type Judgement = Pick<Verdict, 'choice' | 'missing' | 'readyCutPerLb' | 'yieldPct' | 'otherLabor'> & Break;

function judge({ sums, yieldPct, pool, gaps, ...said }: Case): Judgement {
  const readyCutPerLb = aboveZero(said.readyCutPerLb);
  const purchaseCost = aboveZero(said.pricePerLb) && said.purchaseCost;
  const points = sums === undefined ? {} : breakEven({ sums, purchaseCost, readyCutPerLb });
  const missing: VerdictGap[] = [...gaps];
  if (purchaseCost === undefined) missing.unshift('price');
  if (readyCutPerLb === undefined) missing.unshift('readyCut');
  const choice = choose(points, yieldPct, pool);
  const offer = sums && { sums, purchaseCost, readyCutPerLb };
  const other = offer && otherLabor({ offer, yieldPct, pool }, choice);
  return { ...points, readyCutPerLb, yieldPct, missing, choice, otherLabor: other };
}

const aboveZero = (figure: Decimal | undefined): Decimal | undefined =>
  figure?.gt(ZERO) ? figure : undefined;

/** What was counted, and what was not because nobody said it, or because it is paid anyway. */
function inventory(sums: Sums, isRateMissing: boolean): Pick<Verdict, 'counted' | 'leftOut'> {
  const counted: CostKind[] = [];
  const leftOut: CostKind[] = [];
  (sums.credit.gt(ZERO) ? counted : leftOut).push('credits');
  if (sums.avoidableLabor.gt(ZERO)) counted.push('labor');
  if (sums.fixedLabor.gt(ZERO)) leftOut.push('fixedLabor');
  if (isRateMissing) leftOut.push('laborWithoutRate');
  else if (sums.avoidableLabor.plus(sums.fixedLabor).isZero()) leftOut.push('labor');
  (sums.packing.gt(ZERO) ? counted : leftOut).push('packing');
  return { counted, leftOut };
}

function portionSaving(portions: PortionAsCut | undefined, verdict: Judgement): Money | undefined {
  const { readyCutPerLb, breakEvenReadyCutPerLb } = verdict;
  if (portions?.targetGrams === undefined || portions.meanGrams === undefined) return undefined;
  if (readyCutPerLb === undefined || breakEvenReadyCutPerLb === undefined) return undefined;
  return costOf(portions.targetGrams, readyCutPerLb).minus(
    costOf(portions.meanGrams, breakEvenReadyCutPerLb),
  );
}

/** Whether one is a real gain and the other a real loss. */
function isOpposite(one: Decimal | undefined, other: Decimal | undefined): boolean {
  if (one === undefined || other === undefined || isNothing(one) || isNothing(other)) return false;
  return one.isNegative() !== other.isNegative();
}

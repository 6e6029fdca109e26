// What the closed tests of one item add up to: enough to tell its cost, yield and verdict at any price without
// reading them again. Every sum is of figures with few places, so that a test is taken out exactly as it was put in.
import { type CostsPerLb, costsPerLb, type Sums } from './costs.ts';
import { decimal, type Decimal, HUNDRED, roundTo, ZERO } from './decimal.ts';
import { type CostSettings, figures, sumsOf } from './figures.ts';
import { costOf, type PerLb } from './money.ts';
import { deviationOf } from './statistics.ts';
import type { Test } from './test.ts';

/** The sums over closed, unflagged tests with a portion weight. */
export interface Pool extends Sums {
  readonly tests: number;
  /** Σ yield and Σ yield², unweighted: portion ÷ received, as shares of 1. */
  readonly yields: Decimal;
  readonly squaredYields: Decimal;
  /** UTC instant at which the newest of them was closed. Taking a test out leaves it. */
  readonly newestClosedAt?: string;
  /** And the first; absent in a pool of before this was kept, until the read models are made anew. */
  readonly oldestClosedAt?: string;
}

export const EMPTY_POOL: Pool = {
  tests: 0,
  receivedGrams: ZERO,
  portionGrams: ZERO,
  credit: ZERO,
  avoidableLabor: ZERO,
  fixedLabor: ZERO,
  packing: ZERO,
  yields: ZERO,
  squaredYields: ZERO,
};

/**
 * The places that each sum is kept to. Weights and money are quotients at times (a sample, a third of an hour); 20
 * places leave 20 digits for their sums. A yield has 15, so that its square has 30 and is exact: pieces that yield
 * the same show no spread at all.
 */
const SUM_PLACES = {
  receivedGrams: 20,
  portionGrams: 20,
  credit: 20,
  avoidableLabor: 20,
  fixedLabor: 20,
  packing: 20,
  yields: 15,
  squaredYields: 30,
} as const;

/** What a test brings to the pool of its item; undefined for one that is open, dropped, does not balance or has no portion weight. */
export function contribution(test: Test, settings: CostSettings): Pool | undefined {
  if (test.status !== 'closed' || test.closedFlagged) return undefined;
  const found = figures(test, settings);
  if (found.overweight || found.portions === undefined) return undefined;
  const sums = sumsOf(found, found.portions.grams);
  const share = roundTo(sums.portionGrams.div(sums.receivedGrams), SUM_PLACES.yields);
  const exact = { ...sums, yields: share, squaredYields: share.pow(2) };
  return {
    ...mapSums((key) => roundTo(exact[key], SUM_PLACES[key])),
    tests: 1,
    newestClosedAt: test.closedAt,
    oldestClosedAt: test.closedAt,
  };
}

/** The pool with what a test brings. */
export function withTest(pool: Pool, added: Pool): Pool {
  const closed = [pool.newestClosedAt, added.newestClosedAt].filter((at) => at !== undefined).sort();
  return {
    ...mapSums((key) => pool[key].plus(added[key])),
    tests: pool.tests + added.tests,
    newestClosedAt: closed.at(-1),
    oldestClosedAt: oldestOf(pool, added),
  };
}

/** Of a pool that does not know its first, nobody knows it. */
function oldestOf(pool: Pool, { oldestClosedAt: added }: Pool): string | undefined {
  const known = pool.oldestClosedAt;
  if (pool.tests === 0) return added;
  return known === undefined || added === undefined || known < added ? known : added;
}

/** The pool without what a test brought to it: exactly as if it had never been added, but for the times. */
export function withoutTest(pool: Pool, removed: Pool): Pool {
  return {
    ...mapSums((key) => pool[key].minus(removed[key])),
    tests: pool.tests - removed.tests,
    newestClosedAt: pool.newestClosedAt,
    oldestClosedAt: pool.oldestClosedAt,
  };
}

export interface PoolFigures {
  readonly tests: number;
  /** Σ portion weight ÷ Σ received weight. */
  readonly yieldPct: Decimal;
  /** Of the yields of the single tests, unweighted; the spread from two tests on. */
  readonly meanYieldPct: Decimal;
  readonly yieldDeviationPct?: Decimal;
  /** At the price given, credits, labour and packing held as they were; absent without a price. */
  readonly costs?: CostsPerLb;
}

/** What the closed tests of an item tell, at a purchase price per pound; undefined where there are none. */
export function poolFigures(
  pool: Pool,
  { pricePerLb }: { readonly pricePerLb?: PerLb },
): PoolFigures | undefined {
  if (pool.tests === 0) return undefined;
  const { tests: count, yields: total, squaredYields: squares } = pool;
  return {
    tests: count,
    yieldPct: pool.portionGrams.times(HUNDRED).div(pool.receivedGrams),
    meanYieldPct: total.times(HUNDRED).div(count),
    yieldDeviationPct: deviationOf({ count, total, squares })?.times(HUNDRED),
    costs: pricePerLb && costsPerLb(pool, costOf(pool.receivedGrams, pricePerLb)),
  };
}

/** A pool as it is stored: plain figures under its own names. */
export type StoredPool = Readonly<Record<string, string>>;

export function encodePool(pool: Pool): StoredPool {
  const { tests, newestClosedAt, oldestClosedAt } = pool;
  return {
    ...Object.fromEntries(SUM_KEYS.map((key) => [key, pool[key].toString()])),
    tests: tests.toString(),
    ...(newestClosedAt === undefined ? {} : { newestClosedAt }),
    ...(oldestClosedAt === undefined ? {} : { oldestClosedAt }),
  };
}

/** A pool as it was stored. Throws where a figure is missing or is none. */
export function decodePool(stored: StoredPool): Pool {
  const tests = Number(stored.tests);
  if (!Number.isSafeInteger(tests) || tests < 0) throw new Error('a stored pool has no number of tests');
  const { newestClosedAt, oldestClosedAt } = stored;
  return { ...mapSums((key) => decimal(stored[key] ?? '')), tests, newestClosedAt, oldestClosedAt };
}

type SumKey = keyof typeof SUM_PLACES;
const SUM_KEYS = Object.keys(SUM_PLACES) as readonly SumKey[];

function mapSums(figureOf: (key: SumKey) => Decimal): Readonly<Record<SumKey, Decimal>> {
  return Object.fromEntries(SUM_KEYS.map((key) => [key, figureOf(key)])) as Record<SumKey, Decimal>;
}

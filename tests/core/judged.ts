// A test judged at a ready-cut price, beside closed tests of which only the yield is told.
import type { Fact } from '../../src/core/facts.ts';
import { type CostSettings, figures } from '../../src/core/figures.ts';
import { contribution, EMPTY_POOL, type Pool, withTest } from '../../src/core/pool.ts';
import { testVerdict, type Verdict } from '../../src/core/verdict.ts';
import { AVOIDABLE, closed, d, lb, portioned, received, testOf } from './given.ts';

/** Closed tests of 10 lb each that gave so many pounds of portions. */
export const yielding = (...pounds: readonly string[]): Pool =>
  pounds.reduce<Pool>((pool, grams) => {
    const test = testOf(received('10', '6'), portioned({ grams: lb(grams) }), closed());
    return withTest(pool, contribution(test, AVOIDABLE) ?? EMPTY_POOL);
  }, EMPTY_POOL);

interface Given {
  readonly facts?: readonly Fact[];
  readonly readyCut?: string;
  readonly pool?: Pool;
  readonly settings?: CostSettings;
}
export const tenToSeven: readonly Fact[] = [received('10', '6'), portioned({ grams: lb('7') })];
export const judged = ({
  facts = tenToSeven,
  readyCut,
  pool = EMPTY_POOL,
  settings = AVOIDABLE,
}: Given): Verdict =>
  testVerdict({
    figures: figures(testOf(...facts), settings),
    readyCutPerLb: readyCut === undefined ? undefined : d(readyCut),
    pool,
  });

// What several tests tell together, held against a second reckoning in whole fractions: cost, yield, spread, the 90 %
// interval, and the verdict with labour counted or paid anyway.
import { describe, expect, test } from 'vitest';
import { contribution, EMPTY_POOL, type Pool, poolFigures, withTest } from '../../src/core/pool.ts';
import { usableCostInterval, yieldInterval } from '../../src/core/sureness.ts';
import { itemVerdict } from '../../src/core/verdict.ts';
import { exact, type Fraction, minus, over, plus, root, sameFigure, times, total } from './exact.ts';
import { AVOIDABLE, closed, lb, portioned, received, testOf, weighed } from './given.ts';
import { d, fc } from './property.ts';

/** One closed test: figures as they are said, in pounds, dollars and minutes. */
interface Said {
  readonly received: string;
  readonly trim: string;
  readonly worth: string;
  readonly portions: string;
  readonly minutes: string;
}
const RATE = '22.5';

const cents = (low: number, high: number): fc.Arbitrary<string> =>
  fc.integer({ min: low, max: high }).map((of) => (of / 100).toFixed(2));
const said: fc.Arbitrary<Said> = fc.record({
  received: cents(1000, 2000),
  trim: cents(5, 150),
  worth: cents(0, 400),
  portions: cents(500, 830),
  minutes: cents(0, 4500),
});
const several = fc.array(said, { minLength: 3, maxLength: 12 });

const poolOf = (tests: readonly Said[]): Pool =>
  tests.reduce<Pool>((pool, of) => {
    const made = contribution(
      testOf(
        received(of.received, '7'),
        weighed('trim', of.trim, of.worth),
        portioned({ grams: lb(of.portions) }),
        { type: 'labored', minutes: d(of.minutes), ratePerHour: d(RATE) },
        closed(),
      ),
      AVOIDABLE,
    );
    return made === undefined ? pool : withTest(pool, made);
  }, EMPTY_POOL);

const sumOf = (tests: readonly Said[], of: (test: Said) => Fraction): Fraction => total(tests.map(of));
const receivedIn = (tests: readonly Said[]): Fraction => sumOf(tests, (test) => exact(test.received));
const portionsIn = (tests: readonly Said[]): Fraction => sumOf(tests, (test) => exact(test.portions));
const creditsIn = (tests: readonly Said[]): Fraction =>
  sumOf(tests, ({ trim, worth }) => times(exact(trim), exact(worth)));
const laborIn = (tests: readonly Said[]): Fraction =>
  sumOf(tests, ({ minutes }) => times(over(exact(minutes), exact(60)), exact(RATE)));

/** Purchase at a price, less credits: what the portions carry. */
const netOf = (tests: readonly Said[], price: string): Fraction =>
  minus(times(exact(price), receivedIn(tests)), creditsIn(tests));

describe('several tests', () => {
  test('yield and cost what the sums say, by weight', () => {
    fc.assert(
      fc.property(several, cents(200, 3000), (tests, price) => {
        const found = poolFigures(poolOf(tests), { pricePerLb: d(price) });
        const [cost, costExpected] = sameFigure(
          found?.costs?.usableCostPerLb,
          over(netOf(tests, price), portionsIn(tests)),
        );
        const [pct, pctExpected] = sameFigure(
          found?.yieldPct,
          times(exact(100), over(portionsIn(tests), receivedIn(tests))),
        );
        expect([cost, pct]).toEqual([costExpected, pctExpected]);
      }),
    );
  });

  // The 0.95 quantiles of Student's t as NIST's handbook prints them, three places (NIST/SEMATECH e-Handbook 1.3.6.7.2).
  const PRINTED: Readonly<Record<number, string>> = { 2: '2.920', 3: '2.353', 4: '2.132', 5: '2.015', 6: '1.943', 7: '1.895', 8: '1.860', 9: '1.833', 10: '1.812', 11: '1.796' }; // prettier-ignore

  /** mean ± t × s ÷ √n of the single yields, unweighted, in percent. */
  function expectedInterval(tests: readonly Said[]): readonly [Fraction, Fraction] {
    const n = exact(tests.length);
    const shares = tests.map((of) => times(exact(100), over(exact(of.portions), exact(of.received))));
    const mean = over(total(shares), n);
    const squares = total(shares.map((share) => times(minus(share, mean), minus(share, mean))));
    const error = root(over(over(squares, minus(n, exact(1))), n));
    const margin = times(exact(PRINTED[tests.length - 1] ?? ''), error);
    return [minus(mean, margin), plus(mean, margin)];
  }

  const near = (figure: { toString(): string } | undefined, expected: Fraction): void => {
    // To the three places of the printed quantile.
    expect(Number(figure?.toString()) / (Number(expected.over) / Number(expected.under))).toBeCloseTo(1, 2);
  };

  test('are as sure of their yield as the printed quantiles say', () => {
    fc.assert(
      fc.property(several, (tests) => {
        const [low, high] = expectedInterval(tests);
        const found = yieldInterval(poolOf(tests));
        near(found?.low, low);
        near(found?.high, high);
      }),
    );
  });

  test('and of their cost: what a received pound costs after credits, through either end of the yield', () => {
    fc.assert(
      fc.property(several, cents(600, 3000), (tests, price) => {
        const [low, high] = expectedInterval(tests);
        fc.pre(low.over > 0n && netOf(tests, price).over > 0n);
        const perReceived = times(exact(100), over(netOf(tests, price), receivedIn(tests)));
        const found = usableCostInterval(poolOf(tests), d(price));
        near(found?.low, over(perReceived, high));
        near(found?.high, over(perReceived, low));
      }),
    );
  });

  test('compare with labour as long as hours would fall, and without it where they are paid anyway', () => {
    fc.assert(
      fc.property(several, cents(200, 3000), cents(200, 4000), (tests, price, readyCut) => {
        const net = netOf(tests, price);
        const [counted, fixed] = [plus(net, laborIn(tests)), net].map((cost) =>
          minus(exact(readyCut), over(cost, portionsIn(tests))),
        );
        for (const [laborAvoidable, expected] of [
          [true, counted],
          [false, fixed],
        ] as const) {
          const { savingPerLb } = itemVerdict({
            pool: poolOf(tests),
            pricePerLb: d(price),
            readyCutPerLb: d(readyCut),
            laborAvoidable,
          });
          const [saving, savingExpected] = sameFigure(savingPerLb, expected ?? exact(0));
          expect(saving.replace(/^-(0\.0*)$/, '$1')).toBe(savingExpected);
        }
      }),
    );
  });

  test('give the other answer exactly where labour decides it', () => {
    fc.assert(
      fc.property(
        several,
        cents(200, 3000),
        cents(200, 4000),
        fc.boolean(),
        (tests, price, readyCut, laborAvoidable) => {
          const asked = { pool: poolOf(tests), pricePerLb: d(price), readyCutPerLb: d(readyCut) };
          const one = itemVerdict({ ...asked, laborAvoidable });
          const other = itemVerdict({ ...asked, laborAvoidable: !laborAvoidable });
          expect(one.otherLabor?.choice ?? one.choice).toBe(other.choice);
          expect(one.otherLabor === undefined).toBe(one.choice === other.choice);
        },
      ),
    );
  });
});

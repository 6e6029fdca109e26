// How sure a pooled cost is: against a second library, and against what must hold exactly.
import jstat from 'jstat';
import { describe, expect, test } from 'vitest';
import { contribution, EMPTY_POOL, type Pool, withTest } from '../../src/core/pool.ts';
import { usableCostInterval, yieldInterval } from '../../src/core/sureness.ts';
import { AVOIDABLE, closed, lb, portioned, received, testOf, weighed } from './given.ts';
import { d, fc } from './property.ts';

const piece = (pounds: string, portions: string, credit = '0'): Pool =>
  contribution(
    testOf(received(pounds, '6'), weighed('trim', '1', credit), portioned({ grams: lb(portions) }), closed()),
    AVOIDABLE,
  ) ?? EMPTY_POOL;
const pooled = (...pieces: readonly Pool[]): Pool => pieces.reduce(withTest, EMPTY_POOL);

describe('the 90 % interval', () => {
  test('is not told of one or two tests', () => {
    expect(yieldInterval(pooled(piece('10', '7'), piece('10', '8')))).toBeUndefined();
    expect(usableCostInterval(pooled(piece('10', '7')), d('6'))).toBeUndefined();
  });

  test('of the yield is the one of another library', () => {
    const shares = fc.array(fc.integer({ min: 500, max: 890 }), { minLength: 3, maxLength: 12 });
    fc.assert(
      fc.property(shares, (hundredths) => {
        const found = yieldInterval(pooled(...hundredths.map((share) => piece('10', `${share / 100}`))));
        const yields = hundredths.map((share) => share / 10);
        const middle = yields.reduce((sum, each) => sum + each, 0) / yields.length;
        const squares = yields.reduce((sum, each) => sum + (each - middle) ** 2, 0);
        const error = Math.sqrt(squares / (yields.length - 1) / yields.length);
        const margin = jstat.studentt.inv(0.95, yields.length - 1) * error;
        expect(found?.low.toNumber()).toBeCloseTo(middle - margin, 6);
        expect(found?.high.toNumber()).toBeCloseTo(middle + margin, 6);
      }),
    );
  });

  // (p Σ received − Σ credits) ÷ Σ portions = (6 × 30 − 3) ÷ 22.5 = 118/15, a fraction that no decimal ends.
  test('of pieces that are alike is the cost itself, to the last digit', () => {
    const alike = pooled(piece('10', '7.5', '1'), piece('10', '7.5', '1'), piece('10', '7.5', '1'));
    const found = usableCostInterval(alike, d('6'));
    expect(found?.low.times(15).minus(118).abs().lt('1e-25')).toBe(true);
    expect(found?.high.toString()).toBe(found?.low.toString());
  });

  test('holds the pooled cost of pieces of one weight, the cheap end at the high yield', () => {
    const found = usableCostInterval(
      pooled(piece('10', '7.4'), piece('10', '7.5'), piece('10', '7.6')),
      d('6'),
    );
    expect(found?.low.lt(8)).toBe(true);
    expect(found?.high.gt(8)).toBe(true);
  });

  test('has no end where the yield could be nothing', () => {
    expect(
      usableCostInterval(pooled(piece('10', '1'), piece('10', '8'), piece('10', '1')), d('6')),
    ).toBeUndefined();
  });
});

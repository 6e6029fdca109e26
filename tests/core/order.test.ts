import { describe, expect, test } from 'vitest';
import { roundUp } from '../../src/core/decimal.ts';
import { endPiece } from '../../src/core/end-piece.ts';
import { evenSizes, gramsToBeSure, gramsToBuy, menuPrice, portionsFrom } from '../../src/core/order.ts';
import { contribution, EMPTY_POOL, type Pool, withTest } from '../../src/core/pool.ts';
import { fromGrams } from '../../src/core/quantity.ts';
import { AVOIDABLE, closed, d, lb, oz, portioned, received, shown, testOf } from './given.ts';
import { fc, figure } from './property.ts';

test('11.3 lb give twelve portions of 14 oz, not thirteen', () => {
  expect(portionsFrom(lb('11.3'), oz('14'))).toBe(12);
});

test('a weight that goes up evenly gives every portion', () => {
  expect(portionsFrom(lb('10.5'), oz('14'))).toBe(12);
});

test('10 lb of portions at a yield of one third are 30 lb, not 30.1', () => {
  const grams = gramsToBuy({ count: 10, eachGrams: lb('1'), receivedGrams: lb('3'), portionGrams: lb('1') });
  expect(roundUp(fromGrams(grams, 'lb'), 1).toString()).toBe('30');
});

test('a portion of 4.80 at a food cost of 32 % sells for 15.00', () => {
  expect(shown(menuPrice(d('4.80'), d('32')))).toBe('15');
});

test('a weight goes up evenly at the sizes that are told', () => {
  fc.assert(
    fc.property(figure(2, 60), figure(2, 30), (pounds, ounces) => {
      const grams = lb(pounds.toString());
      const sizes = evenSizes(grams, oz(ounces.toString()));
      expect(
        sizes.every(({ count, eachGrams }) => eachGrams.times(count).minus(grams).abs().lt('1e-20')),
      ).toBe(true);
      expect(sizes.at(-1)?.eachGrams.lt(oz(ounces.toString()))).toBe(true);
    }),
  );
});

test('an end piece is its portions and the rest', () => {
  fc.assert(
    fc.property(figure(2, 60), figure(2, 30), (end, ounces) => {
      const size = oz(ounces.toString());
      const { count, overGrams } = endPiece(oz(end.toString()), size);
      expect(size.times(count).plus(overGrams).eq(oz(end.toString()))).toBe(true);
      expect(overGrams.isNegative() || overGrams.gte(size)).toBe(false);
    }),
  );
});

describe('the amount that is enough with a chance of 90 %', () => {
  const yields = (...shares: readonly string[]): Pool =>
    shares
      .map((share) =>
        contribution(
          testOf(received('10', '6'), portioned({ grams: lb(share).times(10) }), closed()),
          AVOIDABLE,
        ),
      )
      .reduce<Pool>((pool, each) => (each === undefined ? pool : withTest(pool, each)), EMPTY_POOL);
  const order = { count: 40, eachGrams: lb('1') };

  test('is not told from two tests', () => {
    expect(gramsToBeSure(yields('0.7', '0.8'), order)).toBeUndefined();
  });

  test('is not told where three tests have nothing in common', () => {
    expect(gramsToBeSure(yields('0.05', '0.5', '0.95'), { count: 1, eachGrams: lb('0.5') })).toBeUndefined();
  });

  test('is the plain amount where all pieces are alike', () => {
    expect(gramsToBeSure(yields('0.8', '0.8', '0.8'), order)?.eq(lb('50'))).toBe(true);
  });

  // What nine in ten means: kitchens that test five pieces, ask, and buy so many of the same kind.
  test('is enough for nine of ten kitchens that ask', () => {
    const normal = normals(7);
    const kitchens = 600;
    let enough = 0;
    for (let kitchen = 0; kitchen < kitchens; kitchen += 1) {
      const pool = yields(...Array.from({ length: 5 }, () => (0.75 + 0.02 * normal()).toFixed(6)));
      const pounds =
        gramsToBeSure(pool, { count: 30, eachGrams: lb('1') })
          ?.div(lb('1'))
          .toNumber() ?? 0;
      const reached = [0, 1, 2, 3].reduce((total) => total + 0.75 + 0.02 * normal(), 0) / 4; // 40 lb at 75 %: four pieces
      if (pounds * reached >= 30) enough += 1;
    }
    // ± 3 standard errors of a share of 0.9 in 600.
    expect(Math.abs(enough / kitchens - 0.9)).toBeLessThan(0.037);
  });
});

/** Normal deviates by Box and Muller, from a fixed seed. */
function normals(seed: number): () => number {
  let state = seed;
  const uniform = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

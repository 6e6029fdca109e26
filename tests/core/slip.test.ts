// When a weight is so far outside that a decimal point explains it better, and when it is only a fat piece.
import { describe, expect, test } from 'vitest';
import { EMPTY_POOL, type Pool } from '../../src/core/pool.ts';
import { isFarPrice, slipOf } from '../../src/core/slip.ts';
import { lb } from './given.ts';
import { d, fc } from './property.ts';

/** What tests with these shares (of 1) leave. */
const history = (...shares: readonly string[]): Pool => ({
  ...EMPTY_POOL,
  tests: shares.length,
  receivedGrams: d(`${shares.length}`),
  yields: shares.reduce((sum, share) => sum.plus(share), d('0')),
  squaredYields: shares.reduce((sum, share) => sum.plus(d(share).pow(2)), d('0')),
});
const meant = (pounds: string, of: Pool | undefined, band?: readonly [string, string]): string | undefined =>
  slipOf({
    grams: lb(pounds),
    receivedGrams: lb('14.2'),
    history: of,
    band: band && { lowPct: d(band[0]), highPct: d(band[1]) },
  })
    ?.grams.div(lb('1'))
    .toString();

const trim = history('0.07', '0.08', '0.09');

describe('by the tests', () => {
  test('11 lb of trim where 8 % is usual was 1.1', () => {
    expect(meant('11', trim)).toBe('1.1');
  });

  test('0.11 was 1.1', () => {
    expect(meant('0.11', trim)).toBe('1.1');
  });

  test('five times the usual is not far yet', () => {
    expect(meant('5.6', trim)).toBeUndefined();
  });

  test('far, but nothing ordinary when moved by a place, is no slip of the point', () => {
    expect(meant('5.8', history('0.01', '0.01', '0.01'))).toBeUndefined();
  });

  test('two tests tell nothing', () => {
    expect(meant('11', history('0.08', '0.08'))).toBeUndefined();
  });

  test('tests that differ much allow much', () => {
    expect(meant('6', history('0.01', '0.14', '0.03'))).toBeUndefined();
  });

  test('nothing that the tests themselves gave is ever asked about', () => {
    const shares = fc.array(fc.integer({ min: 1, max: 450 }), { minLength: 3, maxLength: 30 });
    fc.assert(
      fc.property(shares, (thousandths) => {
        const past = history(...thousandths.map((share) => `${share / 1000}`));
        for (const share of thousandths)
          expect(
            slipOf({ grams: d(`${share}`), receivedGrams: d('1000'), history: past, band: undefined }),
          ).toBeUndefined();
      }),
    );
  });
});

describe('by the band of the catalogue, before there are tests', () => {
  test('far over it, and inside it when moved', () => {
    expect(meant('2', undefined, ['0.3', '4'])).toBe('0.2');
    expect(meant('1.7', undefined, ['0.3', '4'])).toBeUndefined();
  });

  test('not where moved it would still be over it', () => {
    expect(meant('6.5', undefined, ['0.3', '4'])).toBeUndefined();
  });

  test("the kitchen's own tests go before it", () => {
    expect(meant('2', history('0.12', '0.13', '0.15'), ['0.3', '4'])).toBeUndefined();
  });
});

test('a price is far at eight times the one before, or an eighth', () => {
  expect(isFarPrice(d('79.5'), d('7.95'))).toBe(true);
  expect(isFarPrice(d('0.795'), d('7.95'))).toBe(true);
  expect(isFarPrice(d('15.9'), d('7.95'))).toBe(false);
  expect(isFarPrice(d('79.5'), undefined)).toBe(false);
  expect(isFarPrice(d('7.95'), d('0'))).toBe(false);
});

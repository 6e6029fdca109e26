// The closed tests of an item, pooled.
import { describe, expect, test } from 'vitest';
import { contribution, decodePool, EMPTY_POOL, encodePool, type Pool, poolFigures, withoutTest, withTest } from '../../src/core/pool.ts'; // prettier-ignore
import type { Fact } from '../../src/core/facts.ts';
import { AVOIDABLE, closed, lb, listed, PAID_ANYWAY, portioned, received, shown, testOf, undone, weighed } from './given.ts'; // prettier-ignore
import { cut, d, fc } from './property.ts';

const pooled = (...facts: readonly Fact[]): Pool | undefined => contribution(testOf(...facts), AVOIDABLE);
const poolOf = (...pieces: readonly (Pool | undefined)[]): Pool =>
  pieces.reduce<Pool>((pool, piece) => (piece === undefined ? pool : withTest(pool, piece)), EMPTY_POOL);
const piece = (pounds: string, portions: string, credit = '0'): Pool | undefined =>
  pooled(received(pounds, '6'), weighed('trim', '1', credit), portioned({ grams: lb(portions) }), closed());

describe('a test is pooled', () => {
  const upToPortions = [received('10', '6'), portioned({ grams: lb('7') })];

  test('once it is closed', () => {
    expect(pooled(...upToPortions)).toBeUndefined();
    expect(pooled(...upToPortions, closed())?.tests).toBe(1);
  });

  test('no more when the closing is undone', () => {
    expect(pooled(...upToPortions, closed(), undone('e3'))).toBeUndefined();
  });

  test('not when it was dropped', () => {
    expect(pooled(...upToPortions, closed(), { type: 'dropped' })).toBeUndefined();
  });

  test('not without a portion weight', () => {
    expect(pooled(received('10', '6'), weighed('trim', '1'), closed())).toBeUndefined();
    expect(pooled(received('10', '6'), portioned({ count: 12 }), closed())).toBeUndefined();
  });

  test('not when it was closed with the flag, even if it balances later', () => {
    expect(pooled(...upToPortions, closed(true))).toBeUndefined();
  });

  test('not while it is overweight, whatever it was closed with', () => {
    expect(pooled(received('10', '6'), portioned({ grams: lb('11') }), closed())).toBeUndefined();
  });

  test('without a price too: its yield counts', () => {
    expect(pooled(received('10'), portioned({ grams: lb('7') }), closed())?.tests).toBe(1);
  });
});

describe('the pool', () => {
  const three = poolOf(piece('10', '7', '2'), piece('12', '9', '2'), piece('10', '8'));

  test('weighs its yield by weight, and its mean not', () => {
    const uneven = poolOf(piece('10', '5'), piece('30', '27'));
    expect(shown(poolFigures(uneven, {})?.yieldPct)).toBe('80');
    expect(shown(poolFigures(uneven, {})?.meanYieldPct)).toBe('70');
  });

  test('tells the cost at any price, with the credits held: (p × Σ received − Σ credits) ÷ Σ portions', () => {
    expect(shown(poolFigures(three, { pricePerLb: d('6') })?.costs?.usableCostPerLb)).toBe('7.833333');
    expect(shown(poolFigures(three, { pricePerLb: d('9') })?.costs?.usableCostPerLb)).toBe('11.833333');
  });

  test('has no cost without a price, but yields', () => {
    const found = poolFigures(three, {});
    expect(found?.costs).toBeUndefined();
    expect(shown(found?.yieldDeviationPct)).toBe('5');
  });

  test('of one test shows no spread', () => {
    expect(poolFigures(poolOf(piece('10', '7')), {})?.yieldDeviationPct).toBeUndefined();
  });

  test('of pieces that yield the same shows the spread 0, though a third has no last digit', () => {
    const same = poolOf(piece('9', '6'), piece('9', '6'), piece('18', '12'));
    expect(poolFigures(same, {})?.yieldDeviationPct?.toString()).toBe('0');
  });

  test('that is empty has no figures', () => {
    expect(poolFigures(EMPTY_POOL, { pricePerLb: d('6') })).toBeUndefined();
  });

  test('keeps avoidable and fixed labour apart', () => {
    const facts = [
      received('10', '6'),
      portioned({ grams: lb('7') }),
      { type: 'labored', minutes: d('20'), ratePerHour: d('21') },
      closed(),
    ] satisfies Fact[];
    const both = poolOf(
      contribution(testOf(...facts), AVOIDABLE),
      contribution(testOf(...facts), PAID_ANYWAY),
    );
    const costs = poolFigures(both, { pricePerLb: d('6') })?.costs;
    expect(shown(costs?.usableCostPerLb)).toBe('8.571429');
    expect(shown(costs?.comparedCostPerLb)).toBe('9.071429');
    expect(shown(costs?.loadedCostPerLb)).toBe('9.571429');
  });

  test('remembers when the newest of its tests was closed', () => {
    const [early, late] = [
      { ...EMPTY_POOL, tests: 1, newestClosedAt: '2026-03-01T10:00:00Z' },
      { ...EMPTY_POOL, tests: 1, newestClosedAt: '2026-03-06T10:00:00Z' },
    ];
    expect(poolOf(late, early).newestClosedAt).toBe('2026-03-06T10:00:00Z');
    expect(poolOf(early, late).newestClosedAt).toBe('2026-03-06T10:00:00Z');
  });
});

/** Cuts with a sample of portions and odd minutes, so that their weights and labour are endless quotients. */
const contributions = fc
  .tuple(cut({ credits: true }), fc.integer({ min: 1, max: 59 }), fc.boolean())
  .map(([{ received: piece, weighings, portioned: said }, minutes, sampled]) => {
    const portions: Fact[] = sampled
      ? [{ ...said, grams: undefined, count: 7 }, listed('0.01', '0.02', '0.01')]
      : [{ ...said, count: undefined }];
    const labored: Fact = { type: 'labored', minutes: d(minutes.toString()), ratePerHour: d('17.35') };
    return pooled(piece, ...weighings, ...portions, labored, closed()) ?? EMPTY_POOL;
  });

const sumsOf = (pool: Pool): unknown => ({
  ...encodePool(pool),
  newestClosedAt: undefined,
  oldestClosedAt: undefined,
});

describe('adding and removing', () => {
  test('a test leaves every sum exactly as it was', () => {
    fc.assert(
      fc.property(fc.array(contributions, { maxLength: 8 }), contributions, (pieces, extra) => {
        const pool = poolOf(...pieces);
        expect(sumsOf(withoutTest(withTest(pool, extra), extra))).toEqual(sumsOf(pool));
      }),
    );
  });

  test('tests in any order makes the same pool, and taking out all of them the empty one', () => {
    fc.assert(
      fc.property(fc.array(contributions, { minLength: 1, maxLength: 8 }), (pieces) => {
        const pool = poolOf(...pieces);
        expect(sumsOf(poolOf(...pieces.toReversed()))).toEqual(sumsOf(pool));
        expect(sumsOf(pieces.reduce(withoutTest, pool))).toEqual(sumsOf(EMPTY_POOL));
      }),
    );
  });

  test('holds among a hundred thousand tests', () => {
    const many = poolOf(piece('14.37', '9.11', '1.85'));
    const large: Pool = {
      ...many,
      tests: 100_000,
      receivedGrams: many.receivedGrams.times(100_000),
      credit: many.credit.times(100_000),
      yields: many.yields.times(100_000),
      squaredYields: many.squaredYields.times(100_000),
    };
    const extra = piece('3', '1.9', '0.77') ?? EMPTY_POOL;
    expect(sumsOf(withoutTest(withTest(large, extra), extra))).toEqual(sumsOf(large));
  });
});

describe('storing', () => {
  test('gives back what was stored', () => {
    fc.assert(
      fc.property(contributions, (pool) => {
        const back = decodePool(JSON.parse(JSON.stringify(encodePool(pool))) as Record<string, string>);
        expect(encodePool(back)).toEqual(encodePool(pool));
        expect(back.tests).toBe(pool.tests);
        expect(back.newestClosedAt).toBe(pool.newestClosedAt);
        expect(back.oldestClosedAt).toBe(pool.oldestClosedAt);
        expect(back.newestClosedAt).toMatch(/^2026-03-06T09:/);
      }),
    );
  });

  test('keeps an empty pool', () => {
    expect(decodePool(encodePool(EMPTY_POOL))).toEqual(EMPTY_POOL);
  });

  test.each([
    ['without a sum', { ...encodePool(EMPTY_POOL), yields: undefined }],
    ['with something else for a sum', { ...encodePool(EMPTY_POOL), yields: '1e5' }],
    ['without a number of tests', { ...encodePool(EMPTY_POOL), tests: undefined }],
    ['with half a test', { ...encodePool(EMPTY_POOL), tests: '0.5' }],
  ])('refuses a pool %s', (_, stored) => {
    expect(() => decodePool(stored as Record<string, string>)).toThrow();
  });
});

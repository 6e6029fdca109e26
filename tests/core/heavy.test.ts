// Portions over some weeks: from what is kept of each closed test.
import { describe, expect, test } from 'vitest';
import { heaviness, portionRow, type PortionRow, readPortionRow } from '../../src/core/heavy.ts';
import { AVOIDABLE, d, lb, listed, oz, portioned, received, shown, testOf } from './given.ts';

const NOW = '2026-03-29T12:00:00Z';
const row = (closedAt: string, more: Partial<PortionRow> = {}): PortionRow => ({
  closedAt, targetGrams: oz('12'), weighed: 10, count: 10, meanGrams: oz('12.3'), listed: 10, under: 0, over: 2,
  overGrams: oz('3'), usableCostPerLb: d('8'), ...more,
}); // prettier-ignore

test('a list leaves its mean, its counts and what lies above the size', () => {
  const closed = testOf(
    received('8', '6'),
    portioned({ count: 4, eachGrams: oz('12') }),
    listed('12.5', '12.1', '11.9', '13'),
  );
  const read = readPortionRow(NOW, portionRow(closed, AVOIDABLE));
  expect([read?.weighed, read?.count, read?.under, read?.over]).toEqual([4, 4, 0, 1]);
  expect(shown(read?.overGrams.div(oz('1')))).toBe('1.6');
  expect(read?.meanGrams.eq(oz('12.375'))).toBe(true);
});

test('a weighed total leaves only what its mean has above the size', () => {
  const closed = testOf(received('8', '6'), portioned({ count: 4, eachGrams: oz('12'), grams: lb('3.1') }));
  const read = readPortionRow(NOW, portionRow(closed, AVOIDABLE));
  expect([read?.listed, shown(read?.overGrams.div(oz('1')))]).toEqual([0, '1.6']);
});

test.each([
  ['that nobody weighed', [received('8', '6'), portioned({ count: 4, eachGrams: oz('12') })]],
  ['of no size', [received('8', '6'), listed('12.5', '12.1')]],
] as const)('portions %s leave nothing', (_, facts) => {
  expect(readPortionRow(NOW, portionRow(testOf(...facts), AVOIDABLE))).toBeUndefined();
});

describe('over the weeks', () => {
  test('each portion counts alike, whatever its test', () => {
    const found = heaviness(
      [
        row('2026-03-08T12:00:00Z'),
        row('2026-03-15T12:00:00Z', { weighed: 30, count: 30, meanGrams: oz('12.1') }),
      ],
      NOW,
    );
    expect([found?.tests, found?.portions]).toEqual([2, 40]);
    expect(shown(found?.offGrams.div(oz('1')))).toBe('0.15'); // (10 × 0.3 + 30 × 0.1) ÷ 40
    expect(shown(found?.offPct)).toBe('1.25');
  });

  // 3 oz above the size in each test, at 8.00 a pound: 1.50 a test; two tests in three weeks.
  test('what is given away is told per portion, per test and per week', () => {
    const { givenAway } = heaviness([row('2026-03-08T12:00:00Z'), row('2026-03-15T12:00:00Z')], NOW) ?? {};
    expect([shown(givenAway?.perPortion), shown(givenAway?.perTest), shown(givenAway?.perWeek)]).toEqual([
      '0.15',
      '1.5',
      '1',
    ]);
  });

  test('a sample stands for all portions of its test', () => {
    const { givenAway } = heaviness([row('2026-03-28T12:00:00Z', { count: 40 })], NOW) ?? {};
    expect([shown(givenAway?.perPortion), shown(givenAway?.perTest)]).toEqual(['0.15', '6']);
  });

  test('one busy day is a week', () => {
    expect(shown(heaviness([row('2026-03-29T08:00:00Z')], NOW)?.givenAway?.perWeek)).toBe('1.5');
  });

  test('older tests are no last weeks', () => {
    expect(heaviness([row('2026-03-01T11:59:59Z')], NOW)).toBeUndefined();
    expect(heaviness([row('2026-03-01T12:00:00Z')], NOW)?.tests).toBe(1);
  });

  test('without a cost nothing is told of money', () => {
    expect(
      heaviness([row('2026-03-28T12:00:00Z', { usableCostPerLb: undefined })], NOW)?.givenAway,
    ).toBeUndefined();
  });
});

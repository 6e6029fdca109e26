// How often a cut is tested of late, by hand.
import { describe, expect, test } from 'vitest';
import { testsPerWeek } from '../../src/core/test-rate.ts';

const WEEK_MS = 7 * 24 * 3600 * 1000;
const NOW = '2026-03-30T09:00:00.000Z';
const weeksAgo = (weeks: number): string => new Date(Date.parse(NOW) - weeks * WEEK_MS).toISOString();

/** `ago`: the closed tests of the item that are read; `first`: the first of all. */
const rate = (ago: readonly number[], first: number | undefined = ago.at(-1)): string | undefined =>
  testsPerWeek({
    pool: { oldestClosedAt: first === undefined ? undefined : weeksAgo(first) },
    closedAt: ago.map(weeksAgo),
    now: NOW,
  })?.toString();

describe('tests a week', () => {
  test('of a kitchen with few weeks are those after the first, by the weeks since', () => {
    expect(rate([0, 1, 2, 3])).toBe('1');
    expect(rate([0, 0.5, 1, 1.5, 2])).toBe('2');
    expect(rate([2, 3, 4])).toBe('0.5');
  });

  test('of one that goes back further are those of the last eight weeks', () => {
    expect(rate([1, 2, 3, 4, 9, 30])).toBe('0.5');
    expect(rate([0, 1, 2, 3, 4, 5, 6, 7, 8.5, 9])).toBe('1');
  });

  test('fall where the cut is tested less than it was', () => {
    const yearAgo = Array.from({ length: 50 }, (_, at) => 20 + at / 3);
    expect(rate([4, ...yearAgo])).toBe('0.125');
    expect(rate(yearAgo)).toBeUndefined();
  });

  test('are told of a busy kitchen by the tests that were read, though they go back less far', () => {
    expect(rate([0, 0.25, 0.5, 0.75, 1], 100)).toBe('4');
  });

  test('are not told within the first week, nor of one test', () => {
    expect(rate([0, 0.2, 0.9])).toBeUndefined();
    expect(rate([3])).toBeUndefined();
    expect(rate([])).toBeUndefined();
  });
});

// "from monday", where the kitchen is.
import { expect, test } from 'vitest';
import { startOfDay } from '../../src/core/local-day.ts';

const CHICAGO = 'America/Chicago';

test('is the next such day, and today on the day itself', () => {
  expect(startOfDay('monday', '2026-03-04T15:00:00.000Z', 'UTC')).toBe('2026-03-09T00:00:00.000Z');
  expect(startOfDay('wednesday', '2026-03-04T15:00:00.000Z', 'UTC')).toBe('2026-03-04T00:00:00.000Z');
  expect(startOfDay('tuesday', '2026-03-04T15:00:00.000Z', 'UTC')).toBe('2026-03-10T00:00:00.000Z');
  expect(startOfDay('tomorrow', '2026-12-31T15:00:00.000Z', 'UTC')).toBe('2027-01-01T00:00:00.000Z');
});

test('begins at midnight of the kitchen, also over a change of the clocks (2026-03-08 in Chicago)', () => {
  expect(startOfDay('sunday', '2026-03-06T15:00:00.000Z', CHICAGO)).toBe('2026-03-08T06:00:00.000Z');
  expect(startOfDay('monday', '2026-03-06T15:00:00.000Z', CHICAGO)).toBe('2026-03-09T05:00:00.000Z');
});

test('goes by the local date: late on Sunday it is Monday in UTC', () => {
  expect(startOfDay('tomorrow', '2026-03-16T03:00:00.000Z', CHICAGO)).toBe('2026-03-16T05:00:00.000Z');
});

test('what is no day is none', () => {
  expect(startOfDay('someday', '2026-03-06T15:00:00.000Z', CHICAGO)).toBeUndefined();
});

// "from monday", where the kitchen is; local days against the published changes of summer time: Chicago 2026-03-08 02:00 and 2026-11-01 02:00.
import { expect, test } from 'vitest';
import { addDays, dateOf, localOf, msOf, startOfDay } from '../../src/core/local-time.ts';

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

const iso = (at: number): string => new Date(at).toISOString();

test.each([
  ['2026-03-06', '11:00', 'America/Chicago', '2026-03-06T17:00:00.000Z'],
  ['2026-03-09', '11:00', 'America/Chicago', '2026-03-09T16:00:00.000Z'],
  ['2026-03-08', '02:30', 'America/Chicago', '2026-03-08T08:30:00.000Z'],
  ['2026-11-01', '01:30', 'America/Chicago', '2026-11-01T06:30:00.000Z'],
  ['2026-11-01', '11:00', 'America/Chicago', '2026-11-01T17:00:00.000Z'],
  ['2026-06-01', '11:00', 'Asia/Kolkata', '2026-06-01T05:30:00.000Z'],
  ['2026-01-01', '11:00', 'Pacific/Kiritimati', '2025-12-31T21:00:00.000Z'],
])('%s %s in %s is %s', (date, time, zone, expected) => {
  expect(iso(msOf(`${date}T${time}`, zone))).toBe(expected);
});

test('a date belongs to the place', () => {
  expect(dateOf(localOf(Date.parse('2026-03-07T05:30:00Z'), 'America/Chicago'))).toBe('2026-03-06');
  expect(dateOf(localOf(Date.parse('2026-03-07T06:00:00Z'), 'America/Chicago'))).toBe('2026-03-07');
  expect(addDays('2026-02-28', 1)).toBe('2026-03-01');
  expect(addDays('2026-03-01', -1)).toBe('2026-02-28');
});

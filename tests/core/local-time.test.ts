// Local days against the published changes of summer time: Chicago 2026-03-08 02:00 and 2026-11-01 02:00.
import { expect, test } from 'vitest';
import { addDays, dateOf, localOf, msOf } from '../../src/core/local-time.ts';

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

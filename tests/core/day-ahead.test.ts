// "from monday", "from the 15th", where the kitchen is; over the published changes of summer time: Chicago 2026-03-08 02:00.
import { expect, test } from 'vitest';
import { dayMeant } from '../../src/core/day-ahead.ts';

const CHICAGO = 'America/Chicago';
const day = (start: string) => ({ is: 'day', start });

test('is the next such day, and today on the day itself', () => {
  expect(dayMeant('monday', '2026-03-04T15:00:00.000Z', 'UTC')).toEqual(day('2026-03-09T00:00:00.000Z'));
  expect(dayMeant('wednesday', '2026-03-04T15:00:00.000Z', 'UTC')).toEqual(day('2026-03-04T00:00:00.000Z'));
  expect(dayMeant('tuesday', '2026-03-04T15:00:00.000Z', 'UTC')).toEqual(day('2026-03-10T00:00:00.000Z'));
  expect(dayMeant('tomorrow', '2026-12-31T15:00:00.000Z', 'UTC')).toEqual(day('2027-01-01T00:00:00.000Z'));
  expect(dayMeant('today', '2026-12-31T15:00:00.000Z', 'UTC')).toEqual(day('2026-12-31T00:00:00.000Z'));
});

test('begins at midnight of the kitchen, also over a change of the clocks (2026-03-08 in Chicago)', () => {
  expect(dayMeant('sunday', '2026-03-06T15:00:00.000Z', CHICAGO)).toEqual(day('2026-03-08T06:00:00.000Z'));
  expect(dayMeant('monday', '2026-03-06T15:00:00.000Z', CHICAGO)).toEqual(day('2026-03-09T05:00:00.000Z'));
  expect(dayMeant('03-09', '2026-03-06T15:00:00.000Z', CHICAGO)).toEqual(day('2026-03-09T05:00:00.000Z'));
});

test('goes by the local date: late on Sunday it is Monday in UTC', () => {
  expect(dayMeant('tomorrow', '2026-03-16T03:00:00.000Z', CHICAGO)).toEqual(day('2026-03-16T05:00:00.000Z'));
});

test('of a month is the one ahead, and unclear where the one behind is nearer', () => {
  expect(dayMeant('15', '2026-11-01T15:00:00.000Z', 'UTC')).toEqual(day('2026-11-15T00:00:00.000Z'));
  expect(dayMeant('1', '2026-10-23T15:00:00.000Z', 'UTC')).toEqual(day('2026-11-01T00:00:00.000Z'));
  expect(dayMeant('31', '2026-11-20T15:00:00.000Z', 'UTC')).toEqual({
    is: 'unclear',
    next: '2026-12-31T00:00:00.000Z',
  });
  expect(dayMeant('15', '2026-10-19T15:00:00.000Z', 'UTC')).toEqual({
    is: 'unclear',
    next: '2026-11-15T00:00:00.000Z',
  });
  expect(dayMeant('19', '2026-10-19T15:00:00.000Z', 'UTC')).toEqual(day('2026-10-19T00:00:00.000Z'));
});

test('with its month is the nearest, ahead or behind', () => {
  expect(dayMeant('12-01', '2026-11-26T15:00:00.000Z', 'UTC')).toEqual(day('2026-12-01T00:00:00.000Z'));
  expect(dayMeant('11-01', '2026-11-26T15:00:00.000Z', 'UTC')).toEqual(day('2026-11-01T00:00:00.000Z'));
  expect(dayMeant('01-05', '2026-12-20T15:00:00.000Z', 'UTC')).toEqual(day('2027-01-05T00:00:00.000Z'));
  expect(dayMeant('02-29', '2027-11-26T15:00:00.000Z', 'UTC')).toEqual(day('2028-02-29T00:00:00.000Z'));
});

test('what is no day is none', () => {
  expect(dayMeant('someday', '2026-03-06T15:00:00.000Z', CHICAGO)).toBeUndefined();
});

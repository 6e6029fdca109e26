// Which moment words of time mean, by the clock on the wall.
import type { ParsedResult } from 'chrono-node';
import { addDays, dateOf, instantOf, type LocalTime, localOf } from '../core/local-time.ts';
import type { Wish } from '../core/reminder.ts';
import { parsed, type Time } from './time-read.ts';
import type { TimeWords } from './time-words.ts';

/** The clock of the person who speaks. */
export interface Clock {
  /** UTC instant, ISO 8601. */
  readonly at: string;
  readonly zone: string;
}

type Found = Omit<Wish, 'text'> | 'past' | 'hour' | undefined;

/** `hour`: a day alone. */
export function resolve(times: TimeWords, { words, repeat, day: dated }: Time, { at, zone }: Clock): Found {
  const now = localOf(Date.parse(at), zone);
  const [result] = parsed(words, now);
  if (result === undefined) return dated === undefined && repeat === undefined ? undefined : 'hour';
  // A stretch from one time to another is no moment.
  if ((result.end ?? undefined) !== undefined) return undefined;
  const { start } = result;
  if (start.tags().has('result/relativeDateAndTime'))
    return repeat === undefined && dated === undefined ? elapsed(result, { at, zone }) : undefined;
  const hour = start.isCertain('hour') ? (start.get('hour') ?? undefined) : undefined;
  if (hour === undefined) return 'hour';
  const minute = String(start.get('minute') ?? 0).padStart(2, '0');
  const said = words.split(' ');
  const day = datedDay(dated, now) ?? dayOf(start, times, said);
  const hours = isSure(times, start, said)
    ? [hour]
    : day === undefined
      ? [hour % 12, (hour % 12) + 12]
      : [hour >= 5 && hour <= 11 ? hour : (hour % 12) + 12];
  const wanted = hours.map((each) => `${String(each).padStart(2, '0')}:${minute}`);
  const when = nextOf(wanted, day, { now, zone });
  if (when === undefined) return 'past';
  // What repeats keeps the hour that was said: most of its days have it.
  return repeat === undefined ? { when: onTheWall(when, zone) } : { when, repeat };
}

/** Whether the words say which half of the day it is. */
function isSure(times: TimeWords, start: ParsedResult['start'], said: readonly string[]): boolean {
  const hour = start.get('hour') ?? 0;
  const words = [...times.sure, ...times.partsOfDay];
  return start.isCertain('meridiem') || hour > 12 || hour === 0 || words.some((word) => said.includes(word));
}

interface Day {
  readonly date: string;
  readonly weekday?: boolean;
  /** The same day of a later month, where the hour is over on this one. */
  readonly later?: string;
}

function datedDay(day: Time['day'], now: LocalTime): Day | undefined {
  if (day === undefined) return undefined;
  if ('ahead' in day) return { date: addDays(dateOf(now), day.ahead) };
  const [date = '', later] = daysNumbered(day.ofMonth, dateOf(now));
  return { date, ...(later === undefined ? {} : { later }) };
}

/** The days of that number from a date on: not every month has a 31st. */
const daysNumbered = (number: number, from: string): readonly string[] =>
  Array.from({ length: MOST_DAYS }, (_, ahead) => addDays(from, ahead)).filter(
    (date) => Number(date.slice(8)) === number,
  );

/** No day of the month is further than two months away. */
const MOST_DAYS = 63;

function dayOf(start: ParsedResult['start'], times: TimeWords, said: readonly string[]): Day | undefined {
  const weekday = start.isCertain('weekday');
  const isNamed =
    weekday ||
    start.isCertain('month') ||
    start.isCertain('day') ||
    times.days.some((day) => said.includes(day));
  const isToday = times.todays.some((day) => said.includes(day));
  if (!isNamed || isToday) return undefined;
  const two = (value: number | null): string => String(value ?? 1).padStart(2, '0');
  return {
    date: `${start.get('year') ?? 1970}-${two(start.get('month'))}-${two(start.get('day'))}`,
    weekday,
  };
}

/** The first of these hours that is still to come: on its day, or on the next day that the clock shows it. */
function nextOf(
  hours: readonly string[],
  day: Day | undefined,
  { now, zone }: { now: LocalTime; zone: string },
): LocalTime | undefined {
  const today = dateOf(now);
  const dates =
    day === undefined
      ? [today, addDays(today, 1)]
      : day.weekday === true
        ? [day.date, addDays(day.date, 7)]
        : [day.date, ...(day.later === undefined ? [] : [day.later])];
  const all = dates.flatMap((date) => hours.map((hour) => `${date}T${hour}`));
  return all.filter((local) => instantOf(local, zone) !== undefined).find((local) => local > now);
}

/** What the clock shows then: in the gap of a clock change an hour later. */
const onTheWall = (local: LocalTime, zone: string): LocalTime => {
  const instant = instantOf(local, zone);
  return instant === undefined ? local : localOf(Date.parse(instant), zone);
};

/** A length of time is elapsed time, whatever the clocks do meanwhile. */
function elapsed({ start, refDate }: ParsedResult, { at, zone }: Clock): Found {
  const wall = Date.UTC(
    start.get('year') ?? 0,
    (start.get('month') ?? 1) - 1,
    start.get('day') ?? 1,
    start.get('hour') ?? 0,
    start.get('minute') ?? 0,
  );
  const ahead = wall - refDate.getTime();
  if (ahead <= 0) return 'past';
  const instant = Date.parse(at) + ahead;
  return { when: localOf(instant, zone), instant };
}

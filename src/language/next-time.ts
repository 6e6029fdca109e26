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

type Found = Omit<Wish, 'text'> | 'past' | undefined;

export function resolve(times: TimeWords, { words, repeat }: Time, { at, zone }: Clock): Found {
  const now = localOf(Date.parse(at), zone);
  const [result] = parsed(words, now);
  // A stretch from one time to another is no moment.
  if (result === undefined || (result.end ?? undefined) !== undefined) return undefined;
  const { start } = result;
  if (start.tags().has('result/relativeDateAndTime'))
    return repeat === undefined ? elapsed(result, { at, zone }) : undefined;
  const part = ['morning', 'afternoon', 'evening'].find((each) => words.includes(each));
  const said = start.isCertain('hour') ? (start.get('hour') ?? undefined) : undefined;
  if (said === undefined) return undefined;
  const minute = String(start.get('minute') ?? 0).padStart(2, '0');
  const isSure =
    start.isCertain('meridiem') ||
    said > 12 ||
    said === 0 ||
    part !== undefined ||
    /noon|midnight|tonight/.test(words);
  const day = dayOf(start, times, words);
  const hours = isSure
    ? [said]
    : day === undefined
      ? [said % 12, (said % 12) + 12]
      : [said >= 5 && said <= 11 ? said : (said % 12) + 12];
  const wanted = hours.map((hour) => `${String(hour).padStart(2, '0')}:${minute}`);
  const when = nextOf(wanted, day, { now, zone });
  if (when === undefined) return 'past';
  // What repeats keeps the hour that was said: most of its days have it.
  return repeat === undefined ? { when: onTheWall(when, zone) } : { when, repeat };
}

interface Day {
  readonly date: string;
  readonly weekday: boolean;
}

function dayOf(start: ParsedResult['start'], times: TimeWords, words: string): Day | undefined {
  const weekday = start.isCertain('weekday');
  const isNamed =
    weekday ||
    start.isCertain('month') ||
    start.isCertain('day') ||
    times.days.some((day) => words.includes(day));
  const isToday = /\b(today|tonight)\b/.test(words);
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
      : day.weekday
        ? [day.date, addDays(day.date, 7)]
        : [day.date];
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

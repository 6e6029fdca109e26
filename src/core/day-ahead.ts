// Which day of the calendar is meant by "monday", "tomorrow", "15" (the 15th) or "12-01" (December 1), as the sentence files write it.
import { addDays, dateOf, type LocalDate, localOf, msOf, weekdayOf } from './local-time.ts';

const WEEKDAYS = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'];
const NEAR_DAYS = [0, 1];

/** `day`: the UTC instant at which it begins, which may be past. `unclear`: as near behind as ahead; `next` is the one ahead. */
export type DayMeant =
  { readonly is: 'day'; readonly start: string } | { readonly is: 'unclear'; readonly next: string };

/** Undefined for what is no day. */
export function dayMeant(day: string, now: string, zone: string): DayMeant | undefined {
  const today = dateOf(localOf(Date.parse(now), zone));
  const start = (date: LocalDate): string => new Date(msOf(`${date}T00:00`, zone)).toISOString();
  const near = ['today', 'tomorrow'].indexOf(day);
  const weekday = WEEKDAYS.indexOf(day) + 1;
  if (near >= 0) return { is: 'day', start: start(addDays(today, NEAR_DAYS[near] ?? 0)) };
  if (weekday > 0) return { is: 'day', start: start(addDays(today, (weekday - weekdayOf(today) + 7) % 7)) };
  if (!/^(\d\d-)?\d{1,2}$/.test(day)) return undefined;
  const { ahead, behind } = around(day, today);
  if (day.includes('-')) return { is: 'day', start: start(nearer(today, ahead, behind)) };
  return nearer(today, ahead, behind) === ahead
    ? { is: 'day', start: start(ahead) }
    : { is: 'unclear', next: start(ahead) };
}

const MOST_DAYS = 366 * 8;

/** The days of that name next to today on either side; today itself is ahead. */
function around(day: string, today: LocalDate): { readonly ahead: LocalDate; readonly behind: LocalDate } {
  const ending = day.includes('-') ? day : `-${day.padStart(2, '0')}`;
  const first = (from: number, step: number): LocalDate => {
    for (let count = from; count < MOST_DAYS; count += 1) {
      const date = addDays(today, count * step);
      if (date.endsWith(ending)) return date;
    }
    return today;
  };
  return { ahead: first(0, 1), behind: first(1, -1) };
}

const daysBetween = (one: LocalDate, other: LocalDate): number =>
  Math.abs(Date.parse(one) - Date.parse(other));

const nearer = (today: LocalDate, ahead: LocalDate, behind: LocalDate): LocalDate =>
  daysBetween(today, behind) < daysBetween(today, ahead) ? behind : ahead;

// Days and hours of a place, by its zone. An hour that the clock skips comes an hour later; of one that it shows twice it is the first.
import { Temporal } from 'temporal-polyfill';

export const DAY_MS = 24 * 60 * 60 * 1000;

/** The local date at an instant, "2026-03-06". */
export const localDate = (at: number, timezone: string): string =>
  Temporal.Instant.fromEpochMilliseconds(at).toZonedDateTimeISO(timezone).toPlainDate().toString();

/** The instant at which the clock of a place shows a time of a date. */
export const instantOf = (date: string, time: string, timezone: string): number =>
  Temporal.PlainDateTime.from(`${date}T${time}`).toZonedDateTime(timezone).epochMilliseconds;

/** The date so many days later. */
export const laterDate = (date: string, days: number): string =>
  Temporal.PlainDate.from(date).add({ days }).toString();

/** "tomorrow", or a weekday in English, as the sentence files write it. */
const DAYS = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'];

/** The UTC instant at which the next such day begins, that of today's name today; undefined for what is no day. */
export function startOfDay(day: string, now: string, zone: string): string | undefined {
  const today = Temporal.Instant.from(now).toZonedDateTimeISO(zone).startOfDay();
  const ahead = day === 'tomorrow' ? 1 : daysUntil(day, today.dayOfWeek);
  return ahead === undefined
    ? undefined
    : new Date(today.add({ days: ahead }).startOfDay().epochMilliseconds).toISOString();
}

function daysUntil(day: string, today: number): number | undefined {
  const wanted = DAYS.indexOf(day) + 1;
  return wanted === 0 ? undefined : (wanted - today + 7) % 7;
}

// A day of the week as a cook says it, to the instant at which it begins where the kitchen is.
import { Temporal } from 'temporal-polyfill';

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

// The days that a summary looks back over, in the kitchen's zone.
import { addDays, dateOf, type LocalDate, localOf, msOf, weekdayOf } from './local-time.ts';

export type Period = 'today' | 'yesterday' | 'week' | 'month';

/** From the first instant to the one after the last; UTC, ISO 8601. */
export interface Stretch {
  readonly from: string;
  readonly to: string;
}

const between = (first: LocalDate, after: LocalDate, zone: string): Stretch => {
  const midnight = (date: LocalDate): string => new Date(msOf(`${date}T00:00`, zone)).toISOString();
  return { from: midnight(first), to: midnight(after) };
};

/** This week begins on Monday, this month on its first. */
export function stretchOf(period: Period, at: string, zone: string): Stretch {
  const today = dateOf(localOf(Date.parse(at), zone));
  const tomorrow = addDays(today, 1);
  switch (period) {
    case 'today':
      return between(today, tomorrow, zone);
    case 'yesterday':
      return between(addDays(today, -1), today, zone);
    case 'week':
      return between(addDays(today, 1 - weekdayOf(today)), tomorrow, zone);
    case 'month':
      return between(`${today.slice(0, 8)}01`, tomorrow, zone);
  }
}

/** The day of a summary, or the seven that end with it. */
export const spanStretch = (span: 'day' | 'week', date: LocalDate, zone: string): Stretch =>
  between(span === 'day' ? date : addDays(date, -6), addDays(date, 1), zone);

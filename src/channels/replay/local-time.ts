// Local wall time in a zone to an instant. In the gap of a clock change the later reading holds, in the overlap the earlier.
import { Temporal } from 'temporal-polyfill';

/** The UTC instant of a local time such as "2026-03-06T09:00"; undefined where date or zone do not exist. */
export function instantOf(local: string, zone: string): string | undefined {
  try {
    return new Date(
      Temporal.PlainDateTime.from(local, { overflow: 'reject' }).toZonedDateTime(zone).epochMilliseconds,
    ).toISOString();
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

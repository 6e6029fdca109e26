// Local wall time in a zone, and instants. In the gap of a clock change the later reading holds, in the overlap the earlier.
// The only file of the core with a library of time: the rules of the zones are not ours to keep.
import { Temporal } from 'temporal-polyfill';

/** A day of the calendar, "2026-03-06". */
export type LocalDate = string;
/** To the minute, "2026-03-06T09:00". */
export type LocalTime = string;

/** The UTC instant of a local time; undefined where date or zone do not exist. */
export function instantOf(local: LocalTime, zone: string): string | undefined {
  try {
    return new Date(
      Temporal.PlainDateTime.from(local, { overflow: 'reject' }).toZonedDateTime(zone).epochMilliseconds,
    ).toISOString();
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

/** The milliseconds of a local time that exists. */
export function msOf(local: LocalTime, zone: string): number {
  const instant = instantOf(local, zone);
  if (instant === undefined) throw new Error(`${local} in ${zone} is no time`);
  return Date.parse(instant);
}

/** What the clock on the wall shows, to the minute. */
export const localOf = (ms: number, zone: string): LocalTime =>
  Temporal.Instant.fromEpochMilliseconds(ms)
    .toZonedDateTimeISO(zone)
    .toPlainDateTime()
    .toString()
    .slice(0, 16);

export const dateOf = (local: LocalTime): LocalDate => local.slice(0, 10);

export const addDays = (date: LocalDate, days: number): LocalDate =>
  Temporal.PlainDate.from(date).add({ days }).toString();

/** 1 is Monday. */
export const weekdayOf = (date: LocalDate): number => Temporal.PlainDate.from(date).dayOfWeek;

export const DAY_MS = 24 * 60 * 60 * 1000;

let allZones: readonly string[] | undefined;

/** The name of a zone in its own spelling: the name itself, or the place in it that no other zone has ("chicago"). */
export function zoneNamed(words: string): string | undefined {
  const wanted = words.trim().toLowerCase().replaceAll(' ', '_');
  const zones = (allZones ??= [...Intl.supportedValuesOf('timeZone'), 'UTC']);
  const same = zones.find((zone) => zone.toLowerCase() === wanted);
  const [place, another] = zones.filter((zone) => zone.toLowerCase().endsWith(`/${wanted}`));
  return same ?? (another === undefined ? place : undefined);
}

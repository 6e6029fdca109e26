// Days and hours of a place, by its zone; what the clock skips (an hour in spring) comes an hour later.
const formats = new Map<string, Intl.DateTimeFormat>();

function partsOf(at: number, timezone: string): string {
  const known = formats.get(timezone);
  const options = { dateStyle: 'short', timeStyle: 'medium', hourCycle: 'h23', timeZone: timezone } as const;
  // The Swedish form of a date is ISO 8601: "2026-03-06 09:00:00".
  const format = known ?? new Intl.DateTimeFormat('sv-SE', options);
  if (known === undefined) formats.set(timezone, format);
  return format.format(at);
}

/** The local date at an instant, "2026-03-06". */
export const localDate = (at: number, timezone: string): string => partsOf(at, timezone).slice(0, 10);

const offset = (at: number, timezone: string): number =>
  Date.parse(`${partsOf(at, timezone).replace(' ', 'T')}Z`) - Math.floor(at / 1000) * 1000;

/** The instant at which the clock of a place shows a time of a date; of two the first. */
export function instantOf(date: string, time: string, timezone: string): number {
  const asIfUtc = Date.parse(`${date}T${time}:00Z`);
  const [before, after] = [-1, 1].map((day) => offset(asIfUtc + day * DAY_MS, timezone)) as [number, number];
  const first = asIfUtc - before;
  if (offset(first, timezone) === before) return first;
  const second = asIfUtc - after;
  return offset(second, timezone) === after ? second : first;
}

export const DAY_MS = 24 * 60 * 60 * 1000;

/** The date so many days later. */
export const laterDate = (date: string, days: number): string =>
  new Date(Date.parse(`${date}T12:00:00Z`) + days * DAY_MS).toISOString().slice(0, 10);

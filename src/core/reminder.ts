// Reminders, as the memory of the kitchen keeps them: each under a small number, by which it is listed and cancelled. A number is
// given anew only when its last reminder is long done, so that taking back finds what was there.
import { addDays, dateOf, type LocalTime, localOf, msOf, weekdayOf } from './local-time.ts';
import { type Ledger, newest } from './ledger.ts';
import type { Due } from './due.ts';
import type { Kitchen } from './kitchen.ts';
import { name, say } from './reply.ts';

export type Repeat = 'daily' | 'weekly';

/** What was said of a reminder. */
export interface Wish {
  /** Local, of the first occurrence. */
  readonly when: LocalTime;
  /** UTC milliseconds, of one that was said as a length of time ("in two hours"): a change of the clocks does not move it. */
  readonly instant?: number;
  readonly text?: string;
  readonly repeat?: Repeat;
}

export interface Reminder extends Wish {
  readonly number: number;
  /** The entry that set it. */
  readonly entry: string;
  readonly setAt: string;
  /** A member, or nobody in particular. */
  readonly to?: string;
}

const KEY = 'reminder:';
export const reminderKey = (number: number): string => `${KEY}${number}`;
export const toldKey = (number: number): string => `reminderTold:${number}`;
export const CANCELLED = 'cancelled';

/** What stands, in the order of their numbers; done ones left out. */
export function reminders({ memory }: Pick<Kitchen, 'memory'>): readonly Reminder[] {
  const found = [...memory].flatMap(([key, ledger]) =>
    key.startsWith(KEY) ? (reminderIn(Number(key.slice(KEY.length)), ledger) ?? []) : [],
  );
  return found
    .filter((each) => each.repeat !== undefined || !wasTold(memory, each, each.when))
    .sort((a, b) => a.number - b.number);
}

function reminderIn(number: number, ledger: Ledger): Reminder | undefined {
  const found = newest(ledger);
  if (found === undefined || !('text' in found.value) || found.value.text === CANCELLED) return undefined;
  const wish = JSON.parse(found.value.text) as Wish & { to?: string };
  return { ...wish, number, entry: found.entry, setAt: found.at };
}

const occurrence = ({ entry }: Reminder, when: LocalTime): string => `${entry} ${when}`;

function wasTold(memory: Kitchen['memory'], reminder: Reminder, when: LocalTime): boolean {
  const told = memory.get(toldKey(reminder.number)) ?? [];
  return told.some(
    ({ value }) => value !== undefined && 'text' in value && value.text === occurrence(reminder, when),
  );
}

const DAY_MS = 24 * 3600 * 1000;

/** The smallest number that nothing stands under or was done under within a day. */
export function freeNumber(kitchen: Pick<Kitchen, 'memory'>, at: string): number {
  const standing = new Set(reminders(kitchen).map(({ number }) => number));
  const touched = (key: string): number => Date.parse(kitchen.memory.get(key)?.at(-1)?.at ?? '1970-01-01');
  for (let number = 1; ; number += 1) {
    const last = Math.max(touched(reminderKey(number)), touched(toldKey(number)));
    if (!standing.has(number) && Date.parse(at) - last > DAY_MS) return number;
  }
}

/** Of each reminder what is due next, and of one that repeats the newest occurrence that was missed. */
export const reminderDues = (kitchen: Kitchen, now: number): readonly Due[] =>
  reminders(kitchen).flatMap((reminder) =>
    occurrences(reminder, { now, zone: kitchen.settings.timezone })
      .filter(({ when }) => !wasTold(kitchen.memory, reminder, when))
      .map((each) => dueOf(reminder, each)),
  );

interface Occurrence {
  readonly when: LocalTime;
  readonly at: number;
}

function dueOf(reminder: Reminder, { when, at }: Occurrence): Due {
  const { text, to } = reminder;
  return {
    key: `${KEY}${reminder.number}:${occurrence(reminder, when)}`,
    at,
    to: to === undefined ? 'team' : { speaker: to },
    say: [text === undefined ? say('reminder-plain') : say('reminder', { text: name(text) })],
    alarm: false,
  };
}

/** The last one that is not in the future, and the next one. */
function occurrences(
  reminder: Reminder,
  { now, zone }: { now: number; zone: string },
): readonly Occurrence[] {
  const { when, repeat, instant } = reminder;
  if (repeat === undefined) return [{ when, at: instant ?? msOf(when, zone) }];
  const today = dateOf(localOf(now, zone));
  const dates =
    repeat === 'daily' ? [-1, 0, 1].map((days) => addDays(today, days)) : weekly(today, dateOf(when));
  const all = dates
    .filter((date) => date >= dateOf(when))
    .map((date) => `${date}${when.slice(10)}`)
    .map((local) => ({ when: local, at: msOf(local, zone) }));
  const past = all.filter(({ at }) => at <= now).slice(-1);
  const next = all.filter(({ at }) => at > now).slice(0, 1);
  return all.length === 0 ? [{ when, at: msOf(when, zone) }] : [...past, ...next];
}

/** The days of the week before and after today that are the weekday of the first. */
function weekly(today: string, first: string): readonly string[] {
  const ahead = (weekdayOf(first) - weekdayOf(today) + 7) % 7;
  return [ahead - 7, ahead, ahead + 7].map((days) => addDays(today, days));
}

/** The number and the occurrence in the key of a due of ours. */
export function reminderOfKey(key: string): { readonly number: number; readonly told: string } | undefined {
  const found = /^reminder:(\d+):(.+)$/s.exec(key);
  return found === null ? undefined : { number: Number(found[1]), told: found[2] ?? '' };
}

/** When reminders were told too late to be of use; the newest only. */
export const LATE_KEY = 'reminderLate';
/** A minute later is nobody's trouble. */
const LATE_MS = 5 * 60_000;

export const isLate = (dueAt: string, at: string): boolean => Date.parse(at) - Date.parse(dueAt) > LATE_MS;

export const lateReminders = (
  { memory }: Pick<Kitchen, 'memory'>,
  { from, to }: { from: string; to: string },
): number => (memory.get(LATE_KEY) ?? []).filter(({ at }) => at >= from && at < to).length;

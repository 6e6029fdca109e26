// Words that tell a time, read by a library: what they are, and how often. Against the clock they are held elsewhere.
import { en, type ParsedResult } from 'chrono-node';
import type { LocalTime } from '../core/local-time.ts';
import type { Wish } from '../core/reminder.ts';
import type { Language } from './language.ts';
import { inFigures, type TimeWords } from './time-words.ts';

export interface Time {
  readonly repeat?: Wish['repeat'];
  /** In figures. Empty where only the repetition was said, or only a day. */
  readonly words: string;
  /** The next day of that number, or so many days ahead. */
  readonly day?: { readonly ofMonth: number } | { readonly ahead: number };
}

/** Words that the library reads from the first to the last, without those that only say how often. */
export function readTime({ times, numbers }: Language, said: readonly string[]): Time | undefined {
  const { repeat, rest: dated } = repetition(times, said);
  const { day, rest } = dayIn(times, dated);
  const words = readable(times, inFigures(times, numbers, rest));
  const more = { ...(repeat === undefined ? {} : { repeat }), ...(day === undefined ? {} : { day }) };
  if (words === '') return repeat === undefined && !isDay(times, day, said) ? undefined : { words, ...more };
  return isWhole(words) ? { words, ...more } : undefined;
}

function isWhole(words: string): boolean {
  const [result, another] = parsed(words, '2026-01-01T00:00');
  return another === undefined && result?.text.length === words.length;
}

/** "at 9 tomorrow morning" is not read by the library, "tomorrow morning at 9" is. */
function readable({ partsOfDay }: TimeWords, words: readonly string[]): string {
  const said = words.join(' ');
  if (!partsOfDay.includes(words.at(-1) ?? '') || isWhole(said)) return said;
  const turned = words.map((_, at) => [...words.slice(at), ...words.slice(0, at)].join(' '));
  return turned.slice(1, MOST_OF_HOUR + 1).find(isWhole) ?? said;
}

/** So many words may say the hour. */
const MOST_OF_HOUR = 4;

/** A day of the month without its month, which the library does not read, or the day after tomorrow. */
function dayIn(
  times: TimeWords,
  words: readonly string[],
): Pick<Time, 'day'> & { readonly rest: readonly string[] } {
  const text = ` ${words.join(' ')} `;
  const after = times.afterTomorrow.find((phrase) => text.includes(` ${phrase} `));
  if (after !== undefined) return { day: { ahead: 2 }, rest: split(text.replace(` ${after} `, ' ')) };
  const at = words.findIndex((word) => times.ordinal.test(word));
  const from = words.slice(0, at).findLastIndex((word) => !isBefore(times, word)) + 1;
  const month = words[at - 1];
  const isAlone = at >= 0 && (at === 0 || isBefore(times, month ?? '')) && words[at + 1] !== 'of';
  if (isAlone)
    return {
      day: { ofMonth: Number(times.ordinal.exec(words[at] ?? '')?.[1]) },
      rest: [...words.slice(0, from), ...words.slice(at + 1)],
    };
  return { rest: times.onDay.includes(words[0] ?? '') ? words.slice(1) : words };
}

/** A day by itself; "the 2nd tray" is none. */
const isDay = ({ onDay }: TimeWords, day: Time['day'], said: readonly string[]): boolean =>
  day !== undefined && ('ahead' in day || said.some((word) => onDay.includes(word)));

const isBefore = ({ onDay, articles }: TimeWords, word: string): boolean =>
  onDay.includes(word) || articles.includes(word);

const split = (text: string): readonly string[] =>
  text
    .trim()
    .split(/\s+/)
    .filter((word) => word !== '');

function repetition(
  times: TimeWords,
  words: readonly string[],
): { repeat?: Wish['repeat']; rest: readonly string[] } {
  const text = ` ${words.join(' ')} `;
  const daily = times.daily.find((phrase) => text.includes(` ${phrase} `));
  if (daily !== undefined) return { repeat: 'daily', rest: split(text.replace(` ${daily} `, ' ')) };
  const part = Object.entries(times.dailyIn).find(([phrase]) => text.includes(` ${phrase} `));
  if (part !== undefined)
    return { repeat: 'daily', rest: [...split(text.replace(` ${part[0]} `, ' ')), ...split(part[1])] };
  for (const day of times.weekdays) {
    const phrases = [
      ...times.each.map((each) => `${each} ${day}`),
      `${day}${times.plural}`,
      ...times.each.map((each) => `${each} ${day}${times.plural}`),
    ];
    const phrase = phrases.toSorted((a, b) => b.length - a.length).find((each) => text.includes(` ${each} `));
    if (phrase !== undefined)
      return { repeat: 'weekly', rest: split(text.replace(` ${phrase} `, ` ${day} `)) };
  }
  return { rest: words };
}

/** The wall clock is handed over as if it were UTC, so that no rule of the machine's zone comes in. */
export function parsed(words: string, local: LocalTime): readonly ParsedResult[] {
  return en.casual.parse(words, { instant: new Date(`${local}:00Z`), timezone: 0 }, { forwardDate: true });
}

/** A time of day by itself, "18:30"; `unclear` where morning or evening was not said. */
export function readClock(language: Language, words: string): string | undefined {
  const { times } = language;
  const time = readTime(language, words.split(' '));
  const [result] =
    time === undefined || time.repeat !== undefined || time.day !== undefined
      ? []
      : parsed(time.words, '2026-01-01T00:00');
  const hour = result?.start.isCertain('hour') === true ? (result.start.get('hour') ?? undefined) : undefined;
  if (result === undefined || hour === undefined || result.start.tags().has('result/relativeDateAndTime'))
    return undefined;
  const isSure =
    result.start.isCertain('meridiem') ||
    hour > 12 ||
    hour === 0 ||
    [...times.sure, ...times.partsOfDay].some((word) => words.split(' ').includes(word));
  return isSure
    ? `${String(hour).padStart(2, '0')}:${String(result.start.get('minute') ?? 0).padStart(2, '0')}`
    : undefined;
}

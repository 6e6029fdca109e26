// Words that tell a time, read by a library: what they are, and how often. Against the clock they are held elsewhere.
import { en, type ParsedResult } from 'chrono-node';
import type { LocalTime } from '../core/local-time.ts';
import type { Wish } from '../core/reminder.ts';
import type { Language } from './language.ts';
import { inFigures, type TimeWords } from './time-words.ts';

export interface Time {
  readonly repeat?: Wish['repeat'];
  /** In figures. Empty where only the repetition was said. */
  readonly words: string;
}

/** Words that the library reads from the first to the last, without those that only say how often. */
export function readTime({ times, numbers }: Language, said: readonly string[]): Time | undefined {
  const { repeat, rest } = repetition(times, said);
  const words = inFigures(times, numbers, rest).join(' ');
  if (words === '') return repeat === undefined ? undefined : { repeat, words };
  const [result, another] = parsed(words, '2026-01-01T00:00');
  if (another !== undefined || result?.text.length !== words.length) return undefined;
  return { words, ...(repeat === undefined ? {} : { repeat }) };
}

function repetition(
  times: TimeWords,
  words: readonly string[],
): { repeat?: Wish['repeat']; rest: readonly string[] } {
  const text = ` ${words.join(' ')} `;
  const daily = times.daily.find((phrase) => text.includes(` ${phrase} `));
  const split = (rest: string): readonly string[] =>
    rest
      .trim()
      .split(/\s+/)
      .filter((word) => word !== '');
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
  const time = readTime(language, words.split(' '));
  const [result] =
    time === undefined || time.repeat !== undefined ? [] : parsed(time.words, '2026-01-01T00:00');
  const hour = result?.start.isCertain('hour') === true ? (result.start.get('hour') ?? undefined) : undefined;
  if (result === undefined || hour === undefined || result.start.tags().has('result/relativeDateAndTime'))
    return undefined;
  const isSure =
    result.start.isCertain('meridiem') ||
    hour > 12 ||
    hour === 0 ||
    /noon|midnight|morning|afternoon|evening/.test(words);
  return isSure
    ? `${String(hour).padStart(2, '0')}:${String(result.start.get('minute') ?? 0).padStart(2, '0')}`
    : undefined;
}

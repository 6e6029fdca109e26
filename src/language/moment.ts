// When something is to be told: words of time, by the clock on the wall. An hour without am or pm is the next time that the clock
// shows it; with a named day 5 to 11 are morning and 12 to 4 afternoon.
import type { Wish } from '../core/reminder.ts';
import type { Language } from './language.ts';
import { type Clock, resolve } from './next-time.ts';
import { parsed, readTime, type Time } from './time-read.ts';
import { repeatsIn } from './other-repeats.ts';
import { beginsTime, isTimeWord } from './time-words.ts';

export type { Clock } from './next-time.ts';

/**
 * `none`: no words of time in it. `unclear`: some that can't be read, or two. `past`: a time that was. `hour`: a day without one,
 * which is in `day` as it was said.
 * `repeat`: more often or seldom than we can. `talk`: for nobody's clock.
 */
export type Moment =
  | { readonly is: 'wish'; readonly wish: Wish }
  | { readonly is: 'hour'; readonly day: string; readonly text?: string }
  | { readonly is: 'none' | 'unclear' | 'past' | 'repeat' | 'talk'; readonly text?: string };

interface Span {
  readonly from: number;
  readonly end: number;
  readonly read: Time;
}

/** Words that are nothing but a time. */
export function readTimeWords(language: Language, said: string, clock: Clock): Moment {
  const { times, numbers } = language;
  if (repeatsIn(times, numbers, said.split(' ')).some(({ isKept }) => !isKept)) return { is: 'repeat' };
  const time = readTime(language, said.split(' '));
  return asMoment(time && resolve(times, time, clock), { day: said });
}

function asMoment(
  found: ReturnType<typeof resolve>,
  { day, ...text }: { day: string; text?: string },
): Moment {
  if (found === undefined) return { is: 'unclear', ...text };
  if (found === 'hour') return { is: 'hour', day, ...text };
  return typeof found === 'string' ? { is: found, ...text } : { is: 'wish', wish: { ...found, ...text } };
}

/** What is to be told, and when, in the words of a reminder. */
export function readMoment(language: Language, said: string, clock: Clock): Moment {
  const words = said
    .trim()
    .split(/\s+/)
    .filter((word) => word !== '');
  const plain = words.map((word) =>
    word
      .toLowerCase()
      .replace(/[.,;!?]+$/, '')
      .replaceAll('’', "'"),
  );
  const [span, another] = spansIn(language, plain);
  const often = otherRepeat(language, plain, span);
  if (often !== undefined)
    return {
      is: 'repeat',
      ...asText(language, without(words, [often, ...(span === undefined ? [] : [span])])),
    };
  if (span === undefined && language.times.insteadOfAt.includes(plain[0] ?? ''))
    return readMoment(language, [language.times.at, ...words.slice(1)].join(' '), clock);
  if (span === undefined) {
    const isTalk = language.times.talk.includes(plain[0]?.replaceAll("'", '') ?? '');
    return { is: isTalk ? 'talk' : 'none', ...asText(language, words) };
  }
  const isFor = span.from === 1 && language.times.insteadOfAt.includes(plain[0] ?? '');
  const text = asText(language, without(words, [isFor ? { from: 0, end: span.end } : span]));
  const day = plain.slice(span.from, span.end).join(' ');
  return asMoment(another === undefined ? resolve(language.times, span.read, clock) : undefined, {
    ...text,
    day,
  });
}

/** Whether words of time say on which day: a date, a weekday, how often, or how long from now. */
export function namesDay(language: Language, said: string): boolean {
  const { times } = language;
  const words = said.split(' ');
  const time = readTime(language, words);
  if (time === undefined) return false;
  if (time.day !== undefined || time.repeat !== undefined) return true;
  const start = parsed(time.words, '2026-01-01T00:00')[0]?.start;
  return (
    start?.tags().has('result/relativeDateAndTime') === true ||
    start?.isCertain('weekday') === true ||
    start?.isCertain('day') === true ||
    [...times.days, ...times.todays].some((day) => words.includes(day))
  );
}

type Place = Pick<Span, 'from' | 'end'>;

const without = (words: readonly string[], places: readonly Place[]): readonly string[] =>
  words.filter((_, at) => !places.some(({ from, end }) => at >= from && at < end));

/** What is to be told more often or seldom than each day or week, or so without an hour. */
function otherRepeat(
  { times, numbers }: Language,
  words: readonly string[],
  span: Span | undefined,
): Place | undefined {
  const isRead = ({ from, end }: Place): boolean =>
    span !== undefined && from >= span.from && end <= span.end;
  return repeatsIn(times, numbers, words).find((each) => !each.isKept || !isRead(each));
}

/** Without the words that lead from the time to what is to be done. */
function asText({ times }: Language, words: readonly string[]): { text?: string } {
  const first = words.findIndex((word) => !times.joints.includes(word.toLowerCase().replace(/,$/, '')));
  const text =
    first < 0
      ? ''
      : words
          .slice(first)
          .join(' ')
          .replace(/[\s,.;!?]+$/, '');
  return text === '' ? {} : { text };
}

/** The longest stretches of words of time that are read whole. */
function spansIn(language: Language, words: readonly string[]): readonly Span[] {
  const { times, numbers } = language;
  const spans: Span[] = [];
  for (let at = 0; at < words.length; at += 1) {
    if (!beginsTime(times, words[at] ?? '', words[at + 1] ?? '')) continue;
    let most = at + 1;
    while (most - at < MOST_WORDS && most < words.length && isTimeWord(times, numbers, words[most] ?? ''))
      most += 1;
    const span = longest(language, words, { from: at, most });
    if (span === undefined) continue;
    spans.push(span);
    at = span.end - 1;
  }
  return spans;
}

function longest(
  language: Language,
  words: readonly string[],
  { from, most }: { from: number; most: number },
): Span | undefined {
  for (let end = most; end > Math.max(from, most - MOST_LEFT - 1); end -= 1) {
    if (language.times.leadsOn.has(words[end - 1] ?? '')) continue;
    const read = readTime(language, words.slice(from, end));
    if (read !== undefined) return { from, end, read };
  }
  return undefined;
}

/** More words than these name no time. */
const MOST_WORDS = 10;
/** So many of the last words of a stretch may lead on to something else ("at three to"). */
const MOST_LEFT = 3;

/** The longest words of time that begin at a place: as said, and where they end. Most places begin none, and are told by their first words. */
export function momentAt(
  language: Language,
  words: readonly string[],
  from: number,
): { text: string; end: number } | undefined {
  const { times, numbers } = language;
  const first = words[from] ?? '';
  const isLength = (): boolean =>
    words.slice(from + 1, from + 5).some((word) => times.minute.includes(word) || times.hour.includes(word));
  if (!beginsTime(times, first, words[from + 1] ?? '') && !(isTimeWord(times, numbers, first) && isLength()))
    return undefined;
  let most = from;
  while (most - from < MOST_WORDS && most < words.length && isTimeWord(times, numbers, words[most] ?? ''))
    most += 1;
  const span = longest(language, words, { from, most });
  return span && { text: words.slice(from, span.end).join(' '), end: span.end };
}

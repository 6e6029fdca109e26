// When something is to be told: words of time, by the clock on the wall. An hour without am or pm is the next time that the clock
// shows it; with a named day 5 to 11 are morning and 12 to 4 afternoon.
import { en, type ParsedResult } from 'chrono-node';
import { addDays, dateOf, instantOf, type LocalTime, localOf } from '../core/local-time.ts';
import type { Wish } from '../core/reminder.ts';
import type { Language } from './language.ts';
import { beginsTime, inFigures, isTimeWord, type TimeWords } from './time-words.ts';

/** The clock of the person who speaks. */
export interface Clock {
  /** UTC instant, ISO 8601. */
  readonly at: string;
  readonly zone: string;
}

/** `none`: no words of time in it. `unclear`: some that can't be read, or two. `past`: a time that was. `talk`: for nobody's clock. */
export type Moment =
  | { readonly is: 'wish'; readonly wish: Wish }
  | { readonly is: 'none' | 'unclear' | 'past' | 'talk'; readonly text?: string };

interface Span {
  readonly from: number;
  readonly end: number;
  readonly read: Time;
}

/** Words that are nothing but a time. */
export function readTimeWords(language: Language, said: string, clock: Clock): Moment {
  const time = readTime(language, said.split(' '));
  const wish = time && resolve(language.times, time, clock);
  if (wish === undefined) return { is: 'unclear' };
  return wish === 'past' ? { is: 'past' } : { is: 'wish', wish };
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
  if (span === undefined) {
    const isTalk = language.times.talk.includes(plain[0]?.replaceAll("'", '') ?? '');
    return { is: isTalk ? 'talk' : 'none', ...asText(language, words) };
  }
  const text = asText(language, [...words.slice(0, span.from), ...words.slice(span.end)]);
  const wish = another === undefined ? resolve(language.times, span.read, clock) : undefined;
  if (wish === undefined) return { is: 'unclear', ...text };
  return wish === 'past' ? { is: 'past', ...text } : { is: 'wish', wish: { ...wish, ...text } };
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
  const isLength = words
    .slice(from + 1, from + 5)
    .some((word) => [...times.minute, ...times.hour].includes(word));
  const first = words[from] ?? '';
  if (!beginsTime(times, first, words[from + 1] ?? '') && !(isLength && isTimeWord(times, numbers, first)))
    return undefined;
  let most = from;
  while (most - from < MOST_WORDS && most < words.length && isTimeWord(times, numbers, words[most] ?? ''))
    most += 1;
  const span = longest(language, words, { from, most });
  return span && { text: words.slice(from, span.end).join(' '), end: span.end };
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

interface Time {
  readonly repeat?: Wish['repeat'];
  /** In figures. Empty where only the repetition was said. */
  readonly words: string;
}

/** Words that the library reads from the first to the last, without those that only say how often. */
function readTime({ times, numbers }: Language, said: readonly string[]): Time | undefined {
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
function parsed(words: string, local: LocalTime): readonly ParsedResult[] {
  return en.casual.parse(words, { instant: new Date(`${local}:00Z`), timezone: 0 }, { forwardDate: true });
}

type Found = Omit<Wish, 'text'> | 'past' | undefined;

function resolve(times: TimeWords, { words, repeat }: Time, { at, zone }: Clock): Found {
  const now = localOf(Date.parse(at), zone);
  const [result] = parsed(words, now);
  // A stretch from one time to another is no moment.
  if (result === undefined || (result.end ?? undefined) !== undefined) return undefined;
  const { start } = result;
  if (start.tags().has('result/relativeDateAndTime'))
    return repeat === undefined ? elapsed(result, { at, zone }) : undefined;
  const part = ['morning', 'afternoon', 'evening'].find((each) => words.includes(each));
  const said = start.isCertain('hour') ? (start.get('hour') ?? undefined) : undefined;
  if (said === undefined) return undefined;
  const minute = String(start.get('minute') ?? 0).padStart(2, '0');
  const isSure =
    start.isCertain('meridiem') ||
    said > 12 ||
    said === 0 ||
    part !== undefined ||
    /noon|midnight|tonight/.test(words);
  const day = dayOf(start, times, words);
  const hours = isSure
    ? [said]
    : day === undefined
      ? [said % 12, (said % 12) + 12]
      : [said >= 5 && said <= 11 ? said : (said % 12) + 12];
  const wanted = hours.map((hour) => `${String(hour).padStart(2, '0')}:${minute}`);
  const when = nextOf(wanted, day, { now, zone });
  if (when === undefined) return 'past';
  return { when: onTheWall(when, zone), ...(repeat === undefined ? {} : { repeat }) };
}

interface Day {
  readonly date: string;
  readonly weekday: boolean;
}

function dayOf(start: ParsedResult['start'], times: TimeWords, words: string): Day | undefined {
  const weekday = start.isCertain('weekday');
  const isNamed =
    weekday ||
    start.isCertain('month') ||
    start.isCertain('day') ||
    times.days.some((day) => words.includes(day));
  const isToday = /\b(today|tonight)\b/.test(words);
  if (!isNamed || isToday) return undefined;
  const two = (value: number | null): string => String(value ?? 1).padStart(2, '0');
  return {
    date: `${start.get('year') ?? 1970}-${two(start.get('month'))}-${two(start.get('day'))}`,
    weekday,
  };
}

/** The first of these hours that is still to come: on its day, or on the next day that the clock shows it. */
function nextOf(
  hours: readonly string[],
  day: Day | undefined,
  { now, zone }: { now: LocalTime; zone: string },
): LocalTime | undefined {
  const today = dateOf(now);
  const dates =
    day === undefined
      ? [today, addDays(today, 1)]
      : day.weekday
        ? [day.date, addDays(day.date, 7)]
        : [day.date];
  const all = dates.flatMap((date) => hours.map((hour) => `${date}T${hour}`));
  return all.filter((local) => instantOf(local, zone) !== undefined).find((local) => local > now);
}

/** What the clock shows then: in the gap of a clock change an hour later. */
const onTheWall = (local: LocalTime, zone: string): LocalTime => {
  const instant = instantOf(local, zone);
  return instant === undefined ? local : localOf(Date.parse(instant), zone);
};

/** A length of time is elapsed time, whatever the clocks do meanwhile. */
function elapsed({ start, refDate }: ParsedResult, { at, zone }: Clock): Found {
  const wall = Date.UTC(
    start.get('year') ?? 0,
    (start.get('month') ?? 1) - 1,
    start.get('day') ?? 1,
    start.get('hour') ?? 0,
    start.get('minute') ?? 0,
  );
  const ahead = wall - refDate.getTime();
  if (ahead <= 0) return 'past';
  const instant = Date.parse(at) + ahead;
  return { when: localOf(instant, zone), instant };
}

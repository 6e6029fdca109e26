// Words of time within a sentence, and the same in the figures that the time library reads. "half past three" is "3:30",
// "an hour and a half" is "90 minutes".
import type { NumberWords } from './number-words.ts';
import type { TimeWords } from './times-schema.ts';

export { timesSchema, type TimeWords } from './times-schema.ts';

const FIGURES = /^\d{1,2}(:\d\d)?$/;
const HALVED = /^\d{1,2}(:\d\d)?(am|pm)$/;
const NUMBERED = /^\d{1,2}(st|nd|rd|th)$/;

/** Whether a word may stand in words of time. */
export const isTimeWord = (times: TimeWords, numbers: NumberWords, word: string): boolean =>
  times.goesOn.has(word) ||
  numbers.single.has(word) ||
  numbers.oh.has(word) ||
  FIGURES.test(word) ||
  HALVED.test(word) ||
  NUMBERED.test(word);

/** Whether words of time may begin at a word. */
export const beginsTime = (times: TimeWords, word: string, next: string): boolean =>
  times.begins.has(word) ||
  HALVED.test(word) ||
  (times.articles.includes(word) && NUMBERED.test(next)) ||
  (FIGURES.test(word) && (word.includes(':') || [...times.halves.am, ...times.halves.pm].includes(next)));

type Rewrite = (
  words: readonly string[],
  at: number,
) => readonly [made: readonly string[], taken: number] | undefined;

/** The words with every number and every hour in figures. */
export function inFigures(
  times: TimeWords,
  numbers: NumberWords,
  said: readonly string[],
): readonly string[] {
  const figures = rewritten(
    said.map((word) => halfOf(times, word)),
    [numberWord(numbers)],
  );
  return rewritten(figures, [
    partOfDay(times),
    lengths(times),
    pastAndTo(times),
    digital(times),
    oclock(times),
    atNoon(times),
  ]);
}

const halfOf = ({ halves }: TimeWords, word: string): string =>
  halves.am.includes(word) ? 'am' : halves.pm.includes(word) ? 'pm' : word;

function rewritten(words: readonly string[], rules: readonly Rewrite[]): readonly string[] {
  const made: string[] = [];
  for (let at = 0; at < words.length;) {
    const found = rules.map((rule) => rule(words, at)).find((each) => each !== undefined);
    made.push(...(found?.[0] ?? words.slice(at, at + 1)));
    at += found?.[1] ?? 1;
  }
  return made;
}

/** "twenty five" is one number; "oh five" is the minutes 05. */
const numberWord =
  ({ single, pairs, oh }: NumberWords): Rewrite =>
  (words, at) => {
    const [word = '', next = ''] = [words[at], words[at + 1]];
    const pair = pairs.get(word)?.get(next) ?? sumOf(single.get(word), single.get(next));
    if (pair !== undefined) return [[String(pair)], 2];
    const minutes = oh.has(word) ? single.get(next) : undefined;
    if (minutes !== undefined && minutes.value < 10) return [[`0${minutes.value}`], 2];
    const value = single.get(word)?.value;
    return value === undefined ? undefined : [[String(value)], 1];
  };

function sumOf(
  tens: { value: number; class: string } | undefined,
  digit: { value: number; class: string } | undefined,
): number | undefined {
  return tens?.class === 'tens' && digit?.class === 'digit' && digit.value > 0
    ? tens.value + digit.value
    : undefined;
}

/** "9 in the morning" is 9 am; the article is not kept everywhere. */
const partOfDay =
  ({ within, articles, partOf }: TimeWords): Rewrite =>
  (words, at) => {
    if (!within.includes(words[at] ?? '') || !FIGURES.test(words[at - 1] ?? '')) return undefined;
    const taken = articles.includes(words[at + 1] ?? '') ? 2 : 1;
    const part = words[at + taken] ?? '';
    const half = partOf.am.includes(part) ? 'am' : partOf.pm.includes(part) ? 'pm' : undefined;
    return half === undefined ? undefined : [[half], taken + 1];
  };

const isNumber = (word: string | undefined): boolean => /^\d{1,2}$/.test(word ?? '');

/** "an hour and a half", "two and a half hours", "half an hour", "1 hour 20". */
const lengths =
  (times: TimeWords): Rewrite =>
  (words, at) => {
    const { one, half, and, hour, minute } = times;
    const is = (list: readonly string[], offset: number): boolean => list.includes(words[at + offset] ?? '');
    const count = is(one, 0) ? 1 : isNumber(words[at]) ? Number(words[at]) : undefined;
    if (is(half, 0) && is(one, 1) && is(hour, 2)) return [['30', minute[1] ?? ''], 3];
    if (is(one, 0) && is(half, 1) && is(hour, 2)) return [['30', minute[1] ?? ''], 3];
    if (count === undefined) return undefined;
    const andHalf = (offset: number): boolean =>
      is(and, offset) && is(one, offset + 1) && is(half, offset + 2);
    if (andHalf(1) && is(hour, 4)) return [[String(count * 60 + 30), minute[1] ?? ''], 5];
    if (!is(hour, 1)) return undefined;
    if (andHalf(2)) return [[String(count * 60 + 30), minute[1] ?? ''], 5];
    const more = is(and, 2) ? 3 : 2;
    if (!isNumber(words[at + more])) return [[String(count * 60), minute[1] ?? ''], 2];
    const taken = more + (is(minute, more + 1) ? 2 : 1);
    return [[String(count * 60 + Number(words[at + more])), minute[1] ?? ''], taken];
  };

/** "half past 3", "quarter to 4", "10 past 4". */
const pastAndTo =
  (times: TimeWords): Rewrite =>
  (words, at) => {
    const from =
      times.one.includes(words[at] ?? '') && times.quarter.includes(words[at + 1] ?? '') ? at + 1 : at;
    const word = words[from] ?? '';
    const minutes = times.half.includes(word)
      ? 30
      : times.quarter.includes(word)
        ? 15
        : isNumber(word)
          ? Number(word)
          : undefined;
    const unit = times.minute.includes(words[from + 1] ?? '') ? 1 : 0;
    const [side = '', hour] = [words[from + 1 + unit], words[from + 2 + unit]];
    if (minutes === undefined || minutes === 0 || minutes > 30 || !isNumber(hour)) return undefined;
    const taken = from - at + 3 + unit;
    if (times.past.includes(side)) return [[`${hour}:${String(minutes).padStart(2, '0')}`], taken];
    if (!times.to.includes(side)) return undefined;
    return [[`${Number(hour) === 1 ? 12 : Number(hour) - 1}:${60 - minutes}`], taken];
  };

/** "3 30" is 3:30, unless they are 30 minutes. */
const digital =
  ({ minute, hour }: TimeWords): Rewrite =>
  (words, at) => {
    const [first = '', second = '', third = ''] = words.slice(at, at + 3);
    const isClock = isNumber(first) && Number(first) <= 24 && /^(0\d|[1-5]\d)$/.test(second);
    return isClock && ![...minute, ...hour].includes(third) ? [[`${Number(first)}:${second}`], 2] : undefined;
  };

/** The hour that it follows stands for itself. */
const oclock =
  (times: TimeWords): Rewrite =>
  (words, at) =>
    times.oclock.includes(words[at] ?? '') ? [[], 1] : undefined;

/** The library reads "noon", and nothing before it. */
const atNoon =
  ({ at: preposition, noon }: TimeWords): Rewrite =>
  (words, at) =>
    words[at] === preposition && noon.includes(words[at + 1] ?? '') ? [[words[at + 1] ?? ''], 2] : undefined;

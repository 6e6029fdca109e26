// How often something can't be told: what repeats is told each day or each week, and nothing else.
import type { NumberWords } from './number-words.ts';
import type { TimeWords } from './time-words.ts';

interface Stretch {
  readonly from: number;
  readonly end: number;
  /** Each day, or each week on one day. */
  readonly isKept: boolean;
}

/** Words that say how often: "every two hours", "every monday and thursday", "on weekdays". */
export function repeatsIn(
  times: TimeWords,
  numbers: NumberWords,
  words: readonly string[],
): readonly Stretch[] {
  return words.flatMap((word, at) => {
    const phrase = times.otherRepeats.map((each) => each.split(' ')).find((each) => begins(words, at, each));
    if (phrase !== undefined) return [{ from: at, end: at + phrase.length, isKept: false }];
    return times.every.includes(word) ? (everyAt(times, numbers, { words, at }) ?? []) : [];
  });
}

const begins = (words: readonly string[], at: number, phrase: readonly string[]): boolean =>
  phrase.every((word, index) => words[at + index] === word);

function everyAt(
  times: TimeWords,
  numbers: NumberWords,
  { words, at }: { words: readonly string[]; at: number },
): Stretch | undefined {
  let end = at + 1;
  while (isCounted(times, numbers, words[end] ?? '')) end += 1;
  const isCount = end > at + 1;
  const unit = words[end] ?? '';
  const isDay = times.weekdays.some((day) => unit === day || unit === `${day}${times.plural}`);
  if (!isDay && !times.units.includes(unit)) return undefined;
  end += 1;
  const isOneOfMore =
    times.and.includes(words[end] ?? '') &&
    times.weekdays.some((day) => words[end + 1]?.startsWith(day) === true);
  if (isOneOfMore) end += 2;
  return { from: at, end, isKept: !isCount && !isOneOfMore && (isDay || times.keptUnits.includes(unit)) };
}

const isCounted = (times: TimeWords, numbers: NumberWords, word: string): boolean =>
  times.countedBy.includes(word) || /^\d{1,3}$/.test(word) || numbers.single.has(word);

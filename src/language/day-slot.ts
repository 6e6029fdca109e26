// A day from which something holds: a weekday, "tomorrow", a day of the month ("the 15th"), or a date ("december 1"). Written
// "monday", "tomorrow", "15", "12-01"; which day that is by the calendar is for the core to say.
import { wholes } from './cardinal.ts';
import type { Language } from './language.ts';
import { COST, follows } from './reading.ts';
import type { SlotReader, SlotReading } from './slot.ts';
import type { Token } from './token.ts';

const LONGEST_MONTH = 31;
const DAYS_OF: Readonly<Record<number, number>> = { 2: 29, 4: 30, 6: 30, 9: 30, 11: 30 };

interface Day {
  readonly day: number;
  readonly end: number;
}

export function dayReader(language: Language): SlotReader {
  return (tokens, at) => {
    const word = tokens[at]?.text ?? '';
    const { weekdays, dayWords } = language.times;
    if (weekdays.includes(word) || dayWords.includes(word)) return [{ value: word, end: at + 1, cost: 0 }];
    return [...inFigures(tokens, at), ...monthFirst(language, tokens, at), ...dayFirst(language, tokens, at)];
  };
}

/** "12/1" is a day in December for some and in January for others. */
function inFigures(tokens: readonly Token[], at: number): readonly SlotReading[] {
  const isFigure = (place: number): boolean => tokens[place]?.kind === 'figure';
  const isSlash = (place: number): boolean => tokens[place]?.text === '/';
  if (!isFigure(at) || !isSlash(at + 1) || !isFigure(at + 2)) return [];
  const end = isSlash(at + 3) && isFigure(at + 4) ? at + 5 : at + 3;
  return [{ value: '', end, cost: COST.doubt, doubt: 'whichDay' }];
}

/** "december 1", "dec 1st", "december the first". */
function monthFirst(language: Language, tokens: readonly Token[], at: number): readonly SlotReading[] {
  const month = monthAt(language, tokens[at]);
  if (month === undefined || follows(tokens, at + 1) === undefined) return [];
  return [...ordinals(language, tokens, at + 1), ...numbered(language, tokens, at + 1)].map((found) =>
    dated(month, found),
  );
}

/** "the 15th", "the first of december", "1 december". */
function dayFirst(language: Language, tokens: readonly Token[], at: number): readonly SlotReading[] {
  const { of } = language.times;
  const ordered = ordinals(language, tokens, at);
  const withMonth = [...ordered, ...numbered(language, tokens, at)].flatMap((found) => {
    const joined = of.includes(follows(tokens, found.end)?.text ?? '') ? found.end + 1 : found.end;
    const month = monthAt(language, follows(tokens, joined));
    return month === undefined ? [] : [dated(month, { ...found, end: joined + 1 })];
  });
  // "from the first" may be from the beginning; "from the 1st" is the day.
  const alone = ordered.flatMap((found) =>
    isFirstInWords(found, tokens[at]) ? [] : [dated(undefined, found)],
  );
  return [...withMonth, ...alone];
}

const isFirstInWords = ({ day }: Day, token: Token | undefined): boolean =>
  day === 1 && token?.kind === 'word';

/** A day that no month has, or not this one, is asked about. */
function dated(month: number | undefined, { day, end }: Day): SlotReading {
  const most = month === undefined ? LONGEST_MONTH : (DAYS_OF[month] ?? LONGEST_MONTH);
  if (day < 1 || day > most) return { value: '', end, cost: COST.doubt, doubt: 'whichDay' };
  const two = (value: number): string => String(value).padStart(2, '0');
  return { value: month === undefined ? String(day) : `${two(month)}-${two(day)}`, end, cost: 0 };
}

function monthAt({ times }: Language, token: Token | undefined): number | undefined {
  return token !== undefined && Object.hasOwn(times.months, token.text)
    ? times.months[token.text]
    : undefined;
}

const numbersOf = ({ numbers, counters }: Language) => ({ words: numbers, counters });

const numbered = (language: Language, tokens: readonly Token[], at: number): readonly Day[] =>
  wholes(numbersOf(language), tokens, at).map(({ value, end }) => ({ day: value, end }));

/** "15th", "fifteenth", "twenty first". */
function ordinals(language: Language, tokens: readonly Token[], at: number): readonly Day[] {
  const { ordinals: words, ordinalEndings } = language.times;
  const word = tokens[at]?.text ?? '';
  const own = Object.hasOwn(words, word) ? words[word] : undefined;
  if (own !== undefined) return [{ day: own, end: at + 1 }];
  return numbered(language, tokens, at).flatMap(({ day, end }): readonly Day[] => {
    const next = tokens[end];
    if (next === undefined || next.before !== 'space') return [];
    if (ordinalEndings.includes(next.text) && next.from === tokens[end - 1]?.to)
      return [{ day, end: end + 1 }];
    const ones = Object.hasOwn(words, next.text) ? words[next.text] : undefined;
    const isPair = ones !== undefined && ones < 10 && day % 10 === 0 && tokens[at]?.kind === 'word';
    return isPair ? [{ day: day + ones, end: end + 1 }] : [];
  });
}

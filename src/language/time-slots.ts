// Slots that hold words of time, a time of day, or a zone. What they come to by the clock of the kitchen is read in moment.ts.
import { zoneNamed } from '../core/local-time.ts';
import { dayReader } from './day-slot.ts';
import type { Language } from './language.ts';
import { momentAt } from './moment.ts';
import { readClock } from './time-read.ts';
import { COST } from './reading.ts';
import type { SlotReader } from './slot.ts';
import type { Token } from './token.ts';

export function timeReaders(
  language: Language,
): Readonly<Record<'moment' | 'dayTime' | 'day' | 'zone', SlotReader>> {
  const read = (tokens: readonly Token[], at: number): ReturnType<typeof momentAt> => {
    const { words, ends } = wordsFrom(language, tokens, at);
    const found = momentAt(language, words, 0);
    return found && { text: found.text, end: ends[found.end - 1] ?? at };
  };
  return {
    moment: (tokens, at) => {
      const found = read(tokens, at);
      return found === undefined ? [] : [{ value: found.text, end: found.end, cost: 0 }];
    },
    /** An hour that may be of the morning or the evening is asked about. */
    dayTime: (tokens, at) => {
      const found = read(tokens, at);
      if (found === undefined) return [];
      const clock = readClock(language, found.text);
      return clock === undefined
        ? [{ value: '', end: found.end, cost: COST.doubt, doubt: 'halfOfDay' }]
        : [{ value: clock, end: found.end, cost: 0 }];
    },
    day: dayReader(language),
    zone: (tokens, at) => {
      const rest = tokens.slice(at).map(({ text }) => text);
      const zone = zoneNamed(rest.join(' ').replaceAll(' / ', '/'));
      return zone === undefined ? [] : [{ value: zone, end: tokens.length, cost: 0 }];
    },
  };
}

/** The words from a place on, with the article that was taken off and "29th" in one, and the place behind each. */
function wordsFrom(
  { times }: Language,
  tokens: readonly Token[],
  at: number,
): { readonly words: readonly string[]; readonly ends: readonly number[] } {
  const article = tokens[at]?.determined === true ? times.articles.slice(0, 1) : [];
  const words: string[] = [...article];
  const ends: number[] = article.map(() => at);
  for (let place = at; place < tokens.length; place += 1) {
    const token = tokens[place];
    const before = tokens[place - 1];
    if (token === undefined) break;
    const isEnding = times.ordinalEndings.includes(token.text) && before?.kind === 'figure';
    if (isEnding && words.length > 0 && before.to === token.from) {
      words.push(`${words.pop() ?? ''}${token.text}`);
      ends.pop();
    } else words.push(token.text);
    ends.push(place + 1);
  }
  return { words, ends };
}

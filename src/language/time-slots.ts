// Slots that hold words of time, a time of day, or a zone. What they come to by the clock of the kitchen is read in moment.ts.
import { zoneNamed } from '../core/local-time.ts';
import { dayReader } from './day-slot.ts';
import type { Language } from './language.ts';
import { momentAt } from './moment.ts';
import { readClock } from './time-read.ts';
import { COST } from './reading.ts';
import type { SlotReader } from './slot.ts';

export function timeReaders(
  language: Language,
): Readonly<Record<'moment' | 'dayTime' | 'day' | 'zone', SlotReader>> {
  const read = (tokens: Parameters<SlotReader>[0], at: number): ReturnType<typeof momentAt> =>
    momentAt(
      language,
      tokens.map(({ text }) => text),
      at,
    );
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

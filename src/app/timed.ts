// Words of time in what was said, read by the clock. Where only an hour is lacking, the day is kept until it is told.
import type { BareNumber, Entry } from '../core/entry.ts';
import { decimal, type Decimal } from '../core/decimal.ts';
import type { Wanted } from '../core/question.ts';
import { say } from '../core/reply.ts';
import { wantsClock } from './answer.ts';
import { type Moment, namesDay, readMoment, readTimeWords } from '../language/moment.ts';
import { readClock } from '../language/time-read.ts';
import type { Said } from '../language/parse.ts';
import type { Hearing, Understood } from './understand.ts';

/** Undefined where what was said is about something else. */
export function timed(heard: Said, by: Hearing): readonly Understood[] | undefined {
  const said = hourAlone(heard, by) ?? heard;
  if (said.kind !== 'remind' && said.kind !== 'moment') return undefined;
  const { when, text, ...more } = said.slots;
  const { clock, language } = by;
  if (isHalfOpen(said, by))
    return [
      {
        ask: {
          asked: say('ask-half-of-day', { words: typeof when === 'string' ? when : '' }),
          choices: {},
          wants: by.wants,
        },
      },
    ];
  const asked = said.kind === 'moment' && by.wants?.slot === 'when' ? by.wants.held : undefined;
  const found =
    typeof when === 'string'
      ? readAnswer(when, by, asked)
      : readMoment(language, typeof text === 'string' ? text : '', clock);
  if (found.is === 'talk') return [];
  const held = { ...more, kind: said.kind, ...textOf(found.is === 'wish' ? found.wish : found, when, text) };
  if (found.is === 'wish') {
    const { instant } = found.wish;
    const length = instant === undefined ? {} : lengthOf(said, instant - Date.parse(clock.at));
    return [{ entry: { ...found.wish, ...held, ...length } as unknown as Entry }];
  }
  const day = found.is === 'hour' ? { day: found.day } : {};
  const wants = { held: { ...(asked ?? held), ...day }, slot: 'when' };
  return [{ ask: { asked: say(`ask-when-${found.is}`), choices: {}, wants } }];
}

/** "9" to the question at what hour. */
function hourAlone({ kind, slots, ...more }: Said, { wants }: Hearing): Said | undefined {
  if (kind !== 'amount' || wants?.slot !== 'when' || typeof wants.held['day'] !== 'string') return undefined;
  const hour = (slots['number'] as BareNumber | undefined)?.count;
  if (hour === undefined || hour < 1 || hour > 23) return undefined;
  return { ...more, kind: 'moment', slots: { when: `${hour}:00` } };
}

/** "at 9" to the question whether it is in the morning or the evening tells nothing new. */
const isHalfOpen = ({ kind, slots: { when } }: Said, { wants, language }: Hearing): boolean =>
  kind === 'moment' &&
  wantsClock(wants) &&
  typeof when === 'string' &&
  readClock(language, when) === undefined;

/** An hour by itself is of the day that was said before. */
function readAnswer(when: string, { clock, language }: Hearing, asked: Wanted['held'] | undefined): Moment {
  const day = asked?.['day'];
  return typeof day === 'string' && !namesDay(language, when)
    ? readTimeWords(language, `${when} ${day}`, clock)
    : readTimeWords(language, when, clock);
}

/** Of "25 minutes" to a question that asks for minutes. */
const lengthOf = ({ kind }: Said, ms: number): { minutes?: Decimal } =>
  kind === 'moment' ? { minutes: decimal(String(Math.round(ms / 60_000))) } : {};

/** Said apart from the time, or what is left beside it. */
function textOf(left: { readonly text?: string }, when: unknown, text: unknown): { text?: string } {
  const words = when === undefined ? left.text : typeof text === 'string' ? text : undefined;
  const plain = words?.replace(/[\s.!]+$/, '');
  return plain === undefined || plain === '' ? {} : { text: plain };
}

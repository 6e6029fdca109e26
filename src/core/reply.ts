// What is said back, as data: the name of a message in replies.ftl and what it needs. Wording, units and rounding are
// made at the very end, in the language and units of the person.
import type { Decimal } from './decimal.ts';
import type { Grams } from './quantity.ts';

export type ReplyValue =
  | { readonly is: 'weight'; readonly grams: Grams }
  /** The weight of one portion. */
  | { readonly is: 'size'; readonly grams: Grams }
  /** `exact`: as somebody said it, also where that is a fraction of a cent. */
  | { readonly is: 'money'; readonly amount: Decimal; readonly exact?: true }
  | { readonly is: 'price'; readonly perLb: Decimal; readonly exact?: true }
  | { readonly is: 'percent'; readonly value: Decimal }
  | { readonly is: 'number'; readonly value: Decimal; readonly places: number }
  | { readonly is: 'name'; readonly name: string }
  | { readonly is: 'date'; readonly at: string }
  /** With the time of day. */
  | { readonly is: 'moment'; readonly at: string }
  | { readonly is: 'temperature'; readonly degreesF: Decimal }
  /** A local time, "2026-03-06T15:00"; of one that repeats only the hour or the weekday and hour. */
  | { readonly is: 'clock'; readonly local: string; readonly repeat?: 'daily' | 'weekly' }
  /** Messages said one after the other within another one. */
  | {
      readonly is: 'list';
      readonly of: readonly Reply[];
      readonly by: 'comma' | 'semicolon' | 'space' | 'line';
    }
  | string
  | number;

export interface Reply {
  readonly id: string;
  readonly args?: Readonly<Record<string, ReplyValue>>;
  /** Tells money: withheld from those who may not see costs. */
  readonly cost?: true;
  /** What is said in its place to those. */
  readonly instead?: Reply;
}

export const weight = (grams: Grams): ReplyValue => ({ is: 'weight', grams });
export const size = (grams: Grams): ReplyValue => ({ is: 'size', grams });
export const money = (amount: Decimal): ReplyValue => ({ is: 'money', amount });
export const price = (perLb: Decimal): ReplyValue => ({ is: 'price', perLb });
/** An amount or a price read back as it was said. */
export const saidMoney = (amount: Decimal): ReplyValue => ({ is: 'money', amount, exact: true });
export const saidPrice = (perLb: Decimal): ReplyValue => ({ is: 'price', perLb, exact: true });
export const percent = (value: Decimal): ReplyValue => ({ is: 'percent', value });
export const number = (value: Decimal, places: number): ReplyValue => ({ is: 'number', value, places });
export const name = (text: string): ReplyValue => ({ is: 'name', name: text });
export const date = (at: string): ReplyValue => ({ is: 'date', at });
export const moment = (at: string): ReplyValue => ({ is: 'moment', at });
export const temperature = (degreesF: Decimal): ReplyValue => ({ is: 'temperature', degreesF });
export const clock = (local: string, repeat?: 'daily' | 'weekly'): ReplyValue =>
  repeat === undefined ? { is: 'clock', local } : { is: 'clock', local, repeat };
export const list = (
  of: readonly Reply[],
  by: 'comma' | 'semicolon' | 'space' | 'line' = 'comma',
): ReplyValue => ({
  is: 'list',
  of,
  by,
});

export const say = (id: string, args?: Reply['args']): Reply => (args === undefined ? { id } : { id, args });
/** A message that tells money, and what is said in its place to those who may not see costs. */
export const sayCost = (id: string, args?: Reply['args'], instead?: Reply): Reply => ({
  id,
  args,
  cost: true,
  ...(instead === undefined ? {} : { instead }),
});

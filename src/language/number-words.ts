// The number words of a language, from its numbers.yaml, as the readers look them up.
import { z } from 'zod';
import { decimal, type Decimal } from '../core/decimal.ts';

const words = z.array(z.string());
const digit = z.number().int().min(0).max(99);

export const numbersSchema = z.strictObject({
  decimalMark: z.enum(['.', ',']),
  words: z.record(z.string(), digit),
  oh: words,
  hundred: words,
  thousand: words,
  point: words,
  and: words,
  one: words,
  another: words,
  dozen: z.record(z.string(), z.number().int()),
  fractions: z.record(z.string(), z.string().regex(/^\d+\/\d+$/)),
  homophones: z.strictObject({ sure: z.record(z.string(), digit), beside: z.record(z.string(), digit) }),
});
export type NumbersData = z.infer<typeof numbersSchema>;

/** What a word can be in a number. */
export type NumberClass = 'digit' | 'teen' | 'tens';

export interface NumberWord {
  readonly value: number;
  readonly class: NumberClass;
}

export interface NumberWords {
  readonly single: ReadonlyMap<string, NumberWord>;
  /** "twenty one": the first word, then the second, to the value. */
  readonly pairs: ReadonlyMap<string, ReadonlyMap<string, number>>;
  readonly oh: ReadonlySet<string>;
  readonly hundred: ReadonlySet<string>;
  readonly thousand: ReadonlySet<string>;
  readonly point: ReadonlySet<string>;
  readonly and: ReadonlySet<string>;
  readonly one: ReadonlySet<string>;
  readonly another: ReadonlySet<string>;
  readonly dozen: ReadonlyMap<string, number>;
  readonly fractions: ReadonlyMap<string, Decimal>;
  readonly sure: ReadonlyMap<string, number>;
  readonly beside: ReadonlyMap<string, number>;
}

export function numberWords(data: NumbersData): NumberWords {
  const single = new Map<string, NumberWord>();
  const pairs = new Map<string, Map<string, number>>();
  for (const [phrase, value] of Object.entries(data.words)) {
    const [first = '', second] = phrase.split(' ');
    if (second === undefined) single.set(first, { value, class: classOf(value) });
    else pairs.set(first, (pairs.get(first) ?? new Map<string, number>()).set(second, value));
  }
  return {
    single,
    pairs,
    oh: new Set(data.oh),
    hundred: new Set(data.hundred),
    thousand: new Set(data.thousand),
    point: new Set(data.point),
    and: new Set(data.and),
    one: new Set(data.one),
    another: new Set(data.another),
    dozen: new Map(Object.entries(data.dozen)),
    fractions: new Map(Object.entries(data.fractions).map(([word, share]) => [word, fraction(share)])),
    sure: new Map(Object.entries(data.homophones.sure)),
    beside: new Map(Object.entries(data.homophones.beside)),
  };
}

/** Every word that is part of a number: free text never swallows one. */
export function isNumberWord(words: NumberWords, text: string): boolean {
  const { single, hundred, thousand, dozen, fractions, sure } = words;
  return (
    single.has(text) ||
    hundred.has(text) ||
    thousand.has(text) ||
    dozen.has(text) ||
    fractions.has(text) ||
    sure.has(text)
  );
}

const classOf = (value: number): NumberClass => (value < 10 ? 'digit' : value < 20 ? 'teen' : 'tens');

/** "3/4" as a decimal. Throws where the divisor is 0. */
export function fraction(share: string): Decimal {
  const [over = '', under = ''] = share.split('/');
  if (/^0*$/.test(under)) throw new Error(`not a fraction: ${share}`);
  return decimal(over).div(decimal(under));
}

// Sums of money as they are said: "$7.40", "seven forty", "seven oh five", "seven dollars and forty cents",
// "two eleven sixty four" (211.64). A single trailing digit ("seven four") is in doubt.
import { decimal, type Decimal } from '../core/decimal.ts';
import type { WeightUnit } from '../core/quantity.ts';
import { exactAmounts } from './amount.ts';
import { type Numbers, wholes } from './cardinal.ts';
import { oncePerPlace } from './once.ts';
import { follows, type Reading } from './reading.ts';
import { digitByDigit, hundredsPairs, ohDigit, pairs } from './spoken-pairs.ts';
import type { Token } from './token.ts';
import type { WeightWords } from './weight.ts';

export type Sums = readonly Reading<Decimal>[];

/** A price, and the unit that it is per, if one was said. */
export interface SpokenPrice {
  readonly amount: Decimal;
  readonly per?: WeightUnit;
}

/** Every way to read a sum of money at a place. */
export const sums = oncePerPlace(readSums);

function readSums(words: WeightWords, tokens: readonly Token[], at: number): Sums {
  const { units, numbers } = words;
  const signed = units.sign.has(tokens[at]?.text ?? '');
  if (signed && follows(tokens, at + 1) === undefined) return [];
  const from = signed ? at + 1 : at;
  const told = [
    ...exactAmounts(numbers, tokens, from).filter(
      (each) => !isShare(numbers, tokens.slice(from, each.end), each.value),
    ),
    ...dollarsAndCents(words, tokens, from),
  ];
  const paired = [
    ...pairs(numbers, tokens, from),
    ...hundredsPairs(numbers, tokens, from),
    ...digitByDigit(numbers, tokens, from),
  ];
  return [
    ...told.flatMap((sum) => withCurrency(words, tokens, sum)),
    ...paired.map((sum) => withCents(words, tokens, sum)),
  ];
}

/** "half", "a quarter": nobody names a sum so. */
const isShare = (numbers: Numbers, tokens: readonly Token[], value: Decimal): boolean =>
  value.lt(1) && tokens.some((token) => numbers.words.fractions.has(token.text));

/** A currency word or sign behind the sum; "forty cents". */
function withCurrency(words: WeightWords, tokens: readonly Token[], sum: Reading<Decimal>): Sums {
  const next = follows(tokens, sum.end)?.text ?? '';
  const { units } = words;
  if (units.cent.has(next)) return [{ ...sum, value: sum.value.div(100), end: sum.end + 1 }];
  if (units.whole.has(next) || units.sign.has(next)) return [{ ...sum, end: sum.end + 1 }];
  return [sum];
}

/** "seven forty five cents": the cents are told already. */
const withCents = (
  { units }: WeightWords,
  tokens: readonly Token[],
  sum: Reading<Decimal>,
): Reading<Decimal> =>
  units.cent.has(follows(tokens, sum.end)?.text ?? '') ||
  units.whole.has(follows(tokens, sum.end)?.text ?? '')
    ? { ...sum, end: sum.end + 1 }
    : sum;

/** "seven dollars [and] forty [cents]", "a dollar fifty", "a buck and a half". */
function dollarsAndCents(words: WeightWords, tokens: readonly Token[], at: number): Sums {
  const { numbers, units } = words;
  const article = numbers.words.one.has(tokens[at]?.text ?? '')
    ? [{ value: 1, end: at + 1, form: 'digit' as const, cost: 0 }]
    : [];
  return [...wholes(numbers, tokens, at), ...article].flatMap((lead) => {
    if (!units.whole.has(follows(tokens, lead.end)?.text ?? '')) return [];
    const alone = { value: decimal(String(lead.value)), end: lead.end + 1, cost: lead.cost };
    return [...cents(words, tokens, alone), alone];
  });
}

function cents(words: WeightWords, tokens: readonly Token[], lead: Reading<Decimal>): Sums {
  const { numbers, units } = words;
  const and = numbers.words.and.has(follows(tokens, lead.end)?.text ?? '');
  const from = and ? lead.end + 1 : lead.end;
  if (follows(tokens, from) === undefined) return [];
  const half = and ? exactAmounts(numbers, tokens, from).filter((share) => share.value.lt(1)) : [];
  const whole = [...wholes(numbers, tokens, from), ...ohDigit(numbers, tokens, from)];
  const coins = whole
    .filter((each) => each.value >= 0 && each.value < 100)
    .flatMap((each) => {
      const named = units.cent.has(follows(tokens, each.end)?.text ?? '');
      if (!named && (and || (each.value < 10 && each.form !== 'compound'))) return [];
      return [
        {
          value: lead.value.plus(decimal(String(each.value)).div(100)),
          end: each.end + (named ? 1 : 0),
          cost: lead.cost + each.cost,
        },
      ];
    });
  return [...half.map((share) => ({ ...share, value: share.value.plus(lead.value) })), ...coins];
}

/** A sum and "[a | per | /] unit" behind it. */
export const prices = oncePerPlace(readPrices);

function readPrices(
  words: WeightWords,
  tokens: readonly Token[],
  at: number,
): readonly Reading<SpokenPrice>[] {
  return sums(words, tokens, at).flatMap((sum) => {
    const bare = { ...sum, value: { amount: sum.value } };
    const next = follows(tokens, sum.end);
    const from = next !== undefined && words.units.per.has(next.text) ? sum.end + 1 : sum.end;
    const per = from === sum.end ? undefined : words.units.weight.get(follows(tokens, from)?.text ?? '');
    return per === undefined ? [bare] : [{ ...sum, value: { amount: sum.value, per }, end: from + 1 }];
  });
}

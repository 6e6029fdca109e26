// Weights as they are said: "14.2 lb", "fourteen two", "two pound six", "a pound and a half", "three quarters of a pound".
import { decimal, type Decimal } from '../core/decimal.ts';
import { toGrams, type WeightUnit } from '../core/quantity.ts';
import { amounts, fractions } from './amount.ts';
import { type Numbers, small, wholes } from './cardinal.ts';
import { oncePerPlace } from './once.ts';
import { COST, follows, type Reading } from './reading.ts';
import type { Token } from './token.ts';
import type { UnitWords } from './units.ts';

/** An amount with the unit that was said, if one was. */
export interface SpokenWeight {
  readonly amount: Decimal;
  readonly unit?: WeightUnit;
  /** A second, smaller part in grams ("six ounces" of "two pound six"). */
  readonly moreGrams?: Decimal;
}

export type Weights = readonly Reading<SpokenWeight>[];

export interface WeightWords {
  readonly numbers: Numbers;
  readonly units: UnitWords;
}

/** In grams, a bare amount in the unit given. */
export function gramsOf(weight: SpokenWeight, bare: WeightUnit): Decimal {
  const grams = toGrams(weight.amount, weight.unit ?? bare);
  return weight.moreGrams === undefined ? grams : grams.plus(weight.moreGrams);
}

/** Every way to read a weight at a place, with and without a unit. */
export const weights = oncePerPlace(readWeights);

function readWeights(words: WeightWords, tokens: readonly Token[], at: number): Weights {
  if (tokens[at] === undefined) return [];
  const spoken = amounts(words.numbers, tokens, at);
  return [
    ...hundredsOfGrams(words, tokens, at),
    ...spoken.flatMap((amount) => withUnit(words, tokens, amount)),
    ...articles(words, tokens, at),
  ];
}

const unitAt = (words: WeightWords, tokens: readonly Token[], at: number): WeightUnit | undefined => {
  const token = follows(tokens, at);
  return token && words.units.weight.get(token.text);
};

function withUnit(words: WeightWords, tokens: readonly Token[], amount: Reading<Decimal>): Weights {
  const bare = { ...amount, value: { amount: amount.value } };
  const unit = unitAt(words, tokens, amount.end);
  if (unit !== undefined)
    return afterUnit(
      words,
      tokens,
      { ...amount, value: { amount: amount.value, unit }, end: amount.end + 1 },
      unit,
    );
  const ofUnit = ofAUnit(words, tokens, amount);
  return ofUnit === undefined ? [bare] : [ofUnit, bare];
}

/** "half a pound", "three quarters of a pound": what is below one may stand before "[of] a" unit. */
function ofAUnit(
  words: WeightWords,
  tokens: readonly Token[],
  amount: Reading<Decimal>,
): Reading<SpokenWeight> | undefined {
  if (!amount.value.lt(1)) return undefined;
  const from = words.units.of.has(follows(tokens, amount.end)?.text ?? '') ? amount.end + 1 : amount.end;
  const article = words.numbers.words.one.has(follows(tokens, from)?.text ?? '');
  const unit = article ? unitAt(words, tokens, from + 1) : undefined;
  return unit === undefined ? undefined : { ...amount, value: { amount: amount.value, unit }, end: from + 2 };
}

/** "a pound", "pound and a half". */
function articles(words: WeightWords, tokens: readonly Token[], at: number): Weights {
  const article = words.numbers.words.one.has(tokens[at]?.text ?? '');
  const place = article ? at + 1 : at;
  const unit = place === at ? words.units.weight.get(tokens[at]?.text ?? '') : unitAt(words, tokens, place);
  if (unit === undefined || tokens[place]?.kind !== 'word') return [];
  const one = { value: { amount: decimal('1'), unit }, end: place + 1, cost: 0 };
  const found = afterUnit(words, tokens, one, unit);
  const another = saysAnother(words.numbers, tokens, at);
  return article || another
    ? found
    : found.filter((each) => each.end > one.end && each.value.moreGrams === undefined);
}

/** "another pound", "one more pound". */
const saysAnother = ({ words }: Numbers, tokens: readonly Token[], at: number): boolean =>
  words.another.has(tokens[at - 1]?.text ?? '') ||
  words.another.has(`${tokens[at - 2]?.text ?? ''} ${tokens[at - 1]?.text ?? ''}`);

/** What may come behind a unit: "and a half", "six [ounces]", "point five". */
function afterUnit(
  words: WeightWords,
  tokens: readonly Token[],
  lead: Reading<SpokenWeight>,
  unit: WeightUnit,
): Weights {
  if (!lead.value.amount.isInteger()) return [lead];
  const and = words.numbers.words.and.has(follows(tokens, lead.end)?.text ?? '');
  const from = and ? lead.end + 1 : lead.end;
  if (follows(tokens, from) === undefined) return [lead];
  const halves = and
    ? fractions(words.numbers, tokens, from).filter((share) => unitAt(words, tokens, share.end) === undefined)
    : [];
  const withHalf = halves.map((share) => ({
    ...share,
    value: { amount: lead.value.amount.plus(share.value), unit },
  }));
  return [...withHalf, ...smaller(words, tokens, lead, from), lead];
}

/** "two pound six", "two pounds and six ounces", "two kilo three hundred [grams]". */
function smaller(
  words: WeightWords,
  tokens: readonly Token[],
  lead: Reading<SpokenWeight>,
  from: number,
): Weights {
  const unit = lead.value.unit === 'lb' ? 'oz' : lead.value.unit === 'kg' ? 'g' : undefined;
  if (unit === undefined) return [];
  const below = unit === 'oz' ? 16 : 1000;
  return amounts(words.numbers, tokens, from).flatMap((more) => {
    if (!more.value.lt(below) || !more.value.gt(0)) return [];
    const value = { ...lead.value, moreGrams: toGrams(more.value, unit) };
    const cost = lead.cost + more.cost;
    if (unitAt(words, tokens, more.end) === unit) return [{ ...more, value, cost, end: more.end + 1 }];
    const whole =
      more.value.isInteger() && from === lead.end && unitAt(words, tokens, more.end) === undefined;
    return whole && (unit === 'oz' || more.value.gte(10))
      ? [{ ...more, value, cost: cost + COST.entry }]
      : [];
  });
}

/** "two fifty grams" is 250 g: in grams nobody speaks of decimals. */
function hundredsOfGrams(words: WeightWords, tokens: readonly Token[], at: number): Weights {
  return small(words.numbers, tokens, at).flatMap((lead) => {
    if (lead.value < 1 || lead.form !== 'digit' || follows(tokens, lead.end) === undefined) return [];
    return wholes(words.numbers, tokens, lead.end).flatMap((tail) => {
      const grams = tail.value >= 10 && tail.value <= 99 && unitAt(words, tokens, tail.end) === 'g';
      return grams
        ? [
            {
              value: { amount: decimal(String(lead.value * 100 + tail.value)), unit: 'g' as const },
              end: tail.end + 1,
              cost: 0,
            },
          ]
        : [];
    });
  });
}

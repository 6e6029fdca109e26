// Minutes of work: "25 minutes", "half an hour", "an hour and ten", "1h 20".
import { decimal, type Decimal } from '../core/decimal.ts';
import { amounts } from './amount.ts';
import { oncePerPlace } from './once.ts';
import { follows, type Reading } from './reading.ts';
import type { Token } from './token.ts';
import type { WeightWords } from './weight.ts';

export type Durations = readonly Reading<Decimal>[];

/** Every way to read a length of time at a place, in minutes. A unit must be said. */
export const durations = oncePerPlace(readDurations);

function readDurations(words: WeightWords, tokens: readonly Token[], at: number): Durations {
  const { units, numbers } = words;
  const article = numbers.words.one.has(tokens[at]?.text ?? '')
    ? [{ value: decimal('1'), end: at + 1, cost: 0 }]
    : [];
  return [...amounts(numbers, tokens, at), ...article].flatMap((amount) => {
    const skip = amount.value.lt(1) ? ofAn(words, tokens, amount.end) : 0;
    const unit = follows(tokens, amount.end + skip)?.text ?? '';
    if (units.minute.has(unit)) return [{ ...amount, end: amount.end + skip + 1 }];
    if (!units.hour.has(unit)) return [];
    const hours = { ...amount, value: amount.value.times(60), end: amount.end + skip + 1 };
    return [...pastTheHour(words, tokens, hours), hours];
  });
}

/** How many words "an" or "of an" takes. */
function ofAn({ numbers, units }: WeightWords, tokens: readonly Token[], at: number): number {
  const of = units.of.has(follows(tokens, at)?.text ?? '') ? 1 : 0;
  return numbers.words.one.has(follows(tokens, at + of)?.text ?? '') ? of + 1 : 0;
}

/** "an hour and ten minutes", "an hour and a half", "1h 20". */
function pastTheHour(words: WeightWords, tokens: readonly Token[], hours: Reading<Decimal>): Durations {
  const { units, numbers } = words;
  const and = numbers.words.and.has(follows(tokens, hours.end)?.text ?? '');
  const from = and ? hours.end + 1 : hours.end;
  if (follows(tokens, from) === undefined) return [];
  return amounts(numbers, tokens, from).flatMap((more) => {
    if (more.doubt !== undefined) return [];
    if (and && more.value.lt(1)) return [{ ...more, value: hours.value.plus(more.value.times(60)) }];
    if (!more.value.isInteger() || more.value.isNegative() || more.value.gte(60)) return [];
    const named = units.minute.has(follows(tokens, more.end)?.text ?? '');
    return [{ ...more, value: hours.value.plus(more.value), end: named ? more.end + 1 : more.end }];
  });
}

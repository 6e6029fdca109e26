// Money without its units: "seven forty", "seven oh five", "two eleven sixty four" (211.64), digit by digit.
import type { Decimal } from '../core/decimal.ts';
import { digitAt, type Numbers, small, type Whole, wholes } from './cardinal.ts';
import { COST, follows, type Reading } from './reading.ts';
import { join } from './scale.ts';
import type { Token } from './token.ts';

type Sums = readonly Reading<Decimal>[];

/** "seven forty", "twenty one fifty", "seven oh five"; "seven four" is in doubt. */
export function pairs(numbers: Numbers, tokens: readonly Token[], at: number): Sums {
  return [...wholes(numbers, tokens, at), ...heardDigit(numbers, tokens, at)]
    .filter((lead) => lead.form !== 'figure' && lead.form !== 'thousands')
    .flatMap((lead) =>
      hundredths(numbers, tokens, lead.end).map((tail) => ({
        ...tail,
        value: join(lead.value, tail.digits),
        cost: lead.cost + tail.cost,
      })),
    );
}

/** "for thirty five": a common word is a digit before tens. */
function heardDigit(numbers: Numbers, tokens: readonly Token[], at: number): readonly Whole[] {
  const heard = numbers.words.oh.has(tokens[at]?.text ?? '')
    ? undefined
    : numbers.words.beside.get(tokens[at]?.text ?? '');
  const tens =
    follows(tokens, at + 1) !== undefined && small(numbers, tokens, at + 1).some((tail) => tail.value >= 10);
  return heard !== undefined && tens
    ? [{ value: heard, end: at + 1, form: 'digit', cost: COST.homophone }]
    : [];
}

interface Hundredths {
  readonly digits: string;
  readonly end: number;
  readonly cost: number;
  readonly doubt?: string;
}

function hundredths(numbers: Numbers, tokens: readonly Token[], at: number): readonly Hundredths[] {
  const token = follows(tokens, at);
  if (token?.kind !== 'word') return [];
  const oh = ohDigit(numbers, tokens, at).map((each) => ({
    digits: `0${String(each.value)}`,
    end: each.end,
    cost: each.cost,
  }));
  const spelled = small(numbers, tokens, at).flatMap((each): Hundredths[] => {
    if (each.value >= 10) return [{ digits: String(each.value), end: each.end, cost: each.cost }];
    return [{ digits: String(each.value), end: each.end, cost: each.cost + COST.doubt, doubt: 'trailing' }];
  });
  return [...oh, ...spelled];
}

/** "two eleven sixty four" is 211.64, "one oh five oh eight" is 105.08: hundreds as pairs, then cents. */
export function hundredsPairs(numbers: Numbers, tokens: readonly Token[], at: number): Sums {
  return small(numbers, tokens, at).flatMap((lead) => {
    if (lead.value < 1 || lead.value > 99 || follows(tokens, lead.end) === undefined) return [];
    const tails = [
      ...small(numbers, tokens, lead.end).filter((each) => each.value >= 10),
      ...ohDigit(numbers, tokens, lead.end),
    ];
    return tails.flatMap((tail) =>
      hundredths(numbers, tokens, tail.end)
        .filter((last) => last.doubt === undefined)
        .map((last) => ({
          ...last,
          value: join(lead.value * 100 + tail.value, last.digits),
          cost: lead.cost + tail.cost + last.cost,
        })),
    );
  });
}

/** "seven four oh" is 7.40, "one four nine five" is 14.95: digits one by one, the last two the cents. */
export function digitByDigit(numbers: Numbers, tokens: readonly Token[], at: number): Sums {
  let [text, cost, end] = ['', 0, at];
  for (
    let digit = digitAt(numbers, tokens[at]);
    digit !== undefined && text.length < 6;
    digit = digitAt(numbers, follows(tokens, end))
  ) {
    [text, cost, end] = [text + String(digit.value), cost + digit.cost, end + 1];
  }
  const plain = tokens
    .slice(at, end)
    .every((token) => !numbers.words.beside.has(token.text) || numbers.words.oh.has(token.text));
  if (text.length < 3 || text.length > 5 || !plain) return [];
  return [{ value: join(Number(text.slice(0, -2)), text.slice(-2)), end, cost }];
}

/** "oh five": 5 cents, spoken with its zero. */
export function ohDigit(numbers: Numbers, tokens: readonly Token[], at: number): readonly Whole[] {
  if (!numbers.words.oh.has(tokens[at]?.text ?? '')) return [];
  const digit = digitAt(numbers, follows(tokens, at + 1));
  return digit === undefined ? [] : [{ value: digit.value, end: at + 2, form: 'compound', cost: digit.cost }];
}

// Amounts as a scale shows them: point, digit by digit, "oh", halves and quarters, or a decimal without its point
// ("fourteen two" is 14.2, "one one" is 1.1).
import { decimal, type Decimal } from '../core/decimal.ts';
import { digitAt, type Numbers, type Whole, wholes } from './cardinal.ts';
import { oncePerPlace } from './once.ts';
import { join, scale } from './scale.ts';
import { COST, follows, type Reading } from './reading.ts';
import type { Token } from './token.ts';

export type Amounts = readonly Reading<Decimal>[];

/** Every way to read an amount at a place. A reading with a doubt covers words that can mean two amounts. */
export const amounts = oncePerPlace((numbers: Numbers, tokens, at): Amounts => {
  const exact = exactAmounts(numbers, tokens, at);
  return tokens[at]?.kind === 'word'
    ? [...exact, ...scale(numbers, tokens, wholes(numbers, tokens, at))]
    : exact;
});

/** The same without a decimal that lacks its point. */
export const exactAmounts = oncePerPlace(readExact);

function readExact(numbers: Numbers, tokens: readonly Token[], at: number): Amounts {
  const kind = tokens[at]?.kind;
  if (kind === 'figure') return typed(numbers, tokens, at);
  if (kind !== 'word') return [];
  const whole = wholes(numbers, tokens, at);
  return [
    ...whole.map(asReading),
    ...fractions(numbers, tokens, at),
    ...whole.flatMap((lead) => withFraction(numbers, tokens, lead)),
    ...pointed(numbers, tokens, at, whole),
  ];
}

const asReading = ({ value, end, cost }: Whole): Reading<Decimal> => ({
  value: decimal(String(value)),
  end,
  cost,
});

/** "14.2", "1 1/2", "3/4", "14 point 2". */
function typed(numbers: Numbers, tokens: readonly Token[], at: number): Amounts {
  const token = tokens[at];
  if (token === undefined) return [];
  if (token.garbled) return [{ value: decimal('0'), end: at + 1, cost: COST.doubt, doubt: 'number' }];
  const lead = { value: decimal(token.text), end: at + 1, cost: 0 };
  const share = slashed(tokens, at);
  if (share !== undefined) return [{ value: share, end: at + 3, cost: 0 }, lead];
  const more = follows(tokens, at + 1)?.kind === 'figure' ? slashed(tokens, at + 1) : undefined;
  if (more !== undefined && !token.text.includes('.'))
    return [{ value: lead.value.plus(more), end: at + 4, cost: 0 }];
  const whole = wholes(numbers, tokens, at);
  return [
    lead,
    ...whole.flatMap((each) => withFraction(numbers, tokens, each)),
    ...pointed(numbers, tokens, at, whole),
  ];
}

/** "3/4": below one, over a single- or double-digit divisor. */
function slashed(tokens: readonly Token[], at: number): Decimal | undefined {
  const [over, slash, under] = [tokens[at], follows(tokens, at + 1), follows(tokens, at + 2)];
  if (over?.kind !== 'figure' || slash?.text !== '/' || under?.kind !== 'figure') return undefined;
  if (!/^\d$/.test(over.text) || !/^(2|3|4|8|10|16)$/.test(under.text)) return undefined;
  const share = decimal(over.text).div(decimal(under.text));
  return share.lt(1) && share.gt(0) ? share : undefined;
}

/** "half", "a quarter", "three quarters", "three eighths". */
export function fractions(numbers: Numbers, tokens: readonly Token[], at: number): Amounts {
  const { one, fractions: shares, single } = numbers.words;
  const word = tokens[at]?.text ?? '';
  const alone = shares.get(word);
  if (alone !== undefined) return [{ value: alone, end: at + 1, cost: 0 }];
  const times = one.has(word) ? 1 : single.get(word)?.class === 'digit' ? single.get(word)?.value : undefined;
  const share = shares.get(follows(tokens, at + 1)?.text ?? '');
  if (times === undefined || share === undefined) return [];
  const value = share.times(times);
  return value.gt(0) && value.lt(1) ? [{ value, end: at + 2, cost: 0 }] : [];
}

/** "two and a half", "ten and three quarters". */
export function withFraction(numbers: Numbers, tokens: readonly Token[], lead: Whole): Amounts {
  const and = follows(tokens, lead.end);
  if (and === undefined || !numbers.words.and.has(and.text) || follows(tokens, lead.end + 1) === undefined)
    return [];
  return fractions(numbers, tokens, lead.end + 1).map((share) => ({
    ...share,
    value: share.value.plus(lead.value),
    cost: lead.cost + share.cost,
  }));
}

/** "fourteen point two", "point five", "one four point two five". */
function pointed(numbers: Numbers, tokens: readonly Token[], at: number, whole: readonly Whole[]): Amounts {
  const { point } = numbers.words;
  const leads = [...whole, ...digitString(numbers, tokens, at)];
  if (point.has(tokens[at]?.text ?? '') && !endsNumber(numbers, tokens[at - 1]))
    leads.push({ value: 0, end: at, form: 'digit', cost: COST.entry });
  return leads.flatMap((lead) => {
    const mark = lead.end === at ? tokens[at] : follows(tokens, lead.end);
    return mark !== undefined && point.has(mark.text) ? decimals(numbers, tokens, lead) : [];
  });
}

/** "twelve point five" is one number: the point does not begin another. */
const endsNumber = ({ words }: Numbers, token: Token | undefined): boolean =>
  token !== undefined &&
  (token.kind === 'figure' || words.single.has(token.text) || words.hundred.has(token.text));

/** Digits read one by one before a point: "one four" is 14; "oh" alone is 0. */
function digitString(numbers: Numbers, tokens: readonly Token[], at: number): readonly Whole[] {
  const found: Whole[] = [];
  let [value, cost, end] = [0, 0, at];
  for (
    let digit = digitAt(numbers, tokens[at]);
    digit !== undefined && end - at < 4;
    digit = digitAt(numbers, follows(tokens, end))
  ) {
    [value, cost, end] = [value * 10 + digit.value, cost + digit.cost, end + 1];
    found.push({ value, end, form: 'digit', cost });
  }
  return found.filter((each) => each.end > at + 1 || numbers.words.oh.has(tokens[at]?.text ?? ''));
}

/** What stands behind the point: digits one by one, typed, or "twenty five". Every length, the longest last. */
function decimals(numbers: Numbers, tokens: readonly Token[], lead: Whole): Amounts {
  const from = lead.end + 1;
  const typedPart = follows(tokens, from);
  if (typedPart?.kind === 'figure')
    return /^\d{1,4}$/.test(typedPart.text)
      ? [{ value: join(lead.value, typedPart.text), end: from + 1, cost: lead.cost }]
      : [];
  const found: Reading<Decimal>[] = [];
  let [text, cost, end] = ['', lead.cost, from];
  for (
    let digit = digitAt(numbers, follows(tokens, end));
    digit !== undefined && text.length < 4;
    digit = digitAt(numbers, follows(tokens, end))
  ) {
    [text, cost, end] = [text + String(digit.value), cost + digit.cost, end + 1];
    found.push({ value: join(lead.value, text), end, cost });
  }
  const spelled = follows(tokens, from) === undefined ? [] : wholes(numbers, tokens, from);
  const twoDigits = spelled.filter((each) => each.value >= 10 && each.value <= 99 && each.form !== 'figure');
  return [
    ...found,
    ...twoDigits.map((each) => ({
      value: join(lead.value, String(each.value)),
      end: each.end,
      cost: lead.cost,
    })),
  ];
}

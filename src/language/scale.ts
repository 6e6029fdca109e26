// A decimal without its point: "fourteen two" is 14.2, "one one" is 1.1.
import { type Decimal, decimal } from '../core/decimal.ts';
import { digitAt, type Numbers, type Whole, wholes } from './cardinal.ts';
import { COST, follows, type Reading } from './reading.ts';
import type { Token } from './token.ts';

/** Digits behind a whole number, as its decimals. */
export const join = (whole: number, digits: string): Decimal => decimal(`${String(whole)}.${digits}`);

/** A decimal without its point. What could as well be a larger number ("one oh five", "two fifty") is in doubt. */
export function scale(
  numbers: Numbers,
  tokens: readonly Token[],
  whole: readonly Whole[],
): readonly Reading<Decimal>[] {
  return whole.flatMap((lead) => {
    if (lead.form === 'figure' || lead.form === 'hundreds' || lead.form === 'thousands') return [];
    const first = scaleDigit(numbers, tokens, lead.end);
    const spelled = lead.form === 'tens' && first !== undefined && first.value > 0;
    if (first === undefined || spelled) return paired(numbers, tokens, lead);
    const second = scaleDigit(numbers, tokens, lead.end + 1);
    const cost = lead.cost + first.cost + COST.entry;
    const one: Reading<Decimal> = { value: join(lead.value, String(first.value)), end: lead.end + 1, cost };
    const oneSaid = numbers.words.oh.has(tokens[lead.end]?.text ?? '') ? [] : [one];
    if (second === undefined) return [...oneSaid, ...paired(numbers, tokens, lead)];
    const two = {
      value: join(lead.value, `${String(first.value)}${String(second.value)}`),
      end: lead.end + 2,
      cost: cost + second.cost,
    };
    return [
      ...oneSaid,
      lead.form === 'digit' ? { ...two, cost: two.cost + COST.doubt, doubt: 'number' } : two,
    ];
  });
}

/** A digit behind a whole number; common words that sound like one are not read here. */
function scaleDigit(numbers: Numbers, tokens: readonly Token[], at: number): ReturnType<typeof digitAt> {
  const token = follows(tokens, at);
  return token !== undefined && numbers.words.beside.has(token.text) && !numbers.words.oh.has(token.text)
    ? undefined
    : digitAt(numbers, token);
}

/** "two fifty", "fourteen twenty five": 2.50 or 250? */
function paired(numbers: Numbers, tokens: readonly Token[], lead: Whole): readonly Reading<Decimal>[] {
  if (follows(tokens, lead.end) === undefined || lead.form === 'tens') return [];
  const tail = wholes(numbers, tokens, lead.end).filter(
    (each) => each.value >= 10 && each.value <= 99 && each.form !== 'figure',
  );
  return tail.map((each) => ({
    value: join(lead.value, String(each.value)),
    end: each.end,
    cost: COST.doubt,
    doubt: 'number',
  }));
}

// Numbers by themselves: what they measure shows only in what they answer or correct.
import { decimal, type Decimal } from '../core/decimal.ts';
import type { BareNumber } from '../core/entry.ts';
import { perLbFrom } from '../core/money.ts';
import { portionUnit } from '../core/quantity.ts';
import { wholes } from './cardinal.ts';
import { prices } from './price.ts';
import type { DegreeReader } from './degrees.ts';
import { COST } from './reading.ts';
import type { SlotContext, SlotReading } from './slot.ts';
import type { Token } from './token.ts';
import { gramsOf, type SpokenWeight, weights } from './weight.ts';

/** A number that no sentence tells the sense of: every reading of the same words that is clear. */
export function bareNumbers(
  { context, degrees }: { context: SlotContext; degrees: DegreeReader },
  tokens: readonly Token[],
  at: number,
): readonly SlotReading[] {
  const found = new Map<number, { value: BareNumber; cost: number }>();
  const add = (end: number, value: BareNumber, cost: number): void => {
    if (Object.keys(value).length === 0) return;
    const known = found.get(end);
    found.set(end, { value: { ...value, ...known?.value }, cost: Math.min(cost, known?.cost ?? cost) });
  };
  for (const each of weights(context, tokens, at))
    if (each.doubt === undefined) add(each.end, asWeight(context, each.value), each.cost);
  for (const each of wholes(context.numbers, tokens, at))
    if (each.value > 0) add(each.end, { count: each.value, minutes: decimal(String(each.value)) }, each.cost);
  for (const each of prices(context, tokens, at)) {
    if (each.doubt !== undefined || !each.value.amount.gt(0) || each.value.amount.gt(context.limits.maxSum))
      continue;
    const price = perLbFrom(each.value.amount, each.value.per ?? context.unit);
    add(each.end, each.value.per === undefined ? { price, money: each.value.amount } : { price }, each.cost);
  }
  for (const each of degrees(tokens, at))
    // A number that can be nothing else is no temperature by itself.
    if (each.doubt === undefined && (found.has(each.end) || each.marked))
      add(each.end, { degrees: each.value as Decimal }, each.cost);
  const token = tokens[at];
  if (found.size === 0 && token?.kind === 'figure') return [impossibleTo(at + 1)];
  const read = [...found].map(([end, each]) => ({ ...each, cost: each.cost + COST.entry, end }));
  return [...read, ...beyondScales(context, tokens, at).filter(({ end }) => !found.has(end))];
}

const impossibleTo = (end: number): SlotReading => ({
  value: {},
  end,
  cost: COST.doubt,
  doubt: 'impossible',
});

/** Weights with their unit that no scale shows ("point zero one ounces"). */
const beyondScales = (context: SlotContext, tokens: readonly Token[], at: number): readonly SlotReading[] =>
  weights(context, tokens, at)
    .filter(({ value, doubt }) => doubt === undefined && value.unit !== undefined)
    .filter(({ value }) => Object.keys(asWeight(context, value)).length === 0)
    .map(({ end }) => impossibleTo(end));

function asWeight(context: SlotContext, weight: SpokenWeight): BareNumber {
  const [grams, each] = [gramsOf(weight, context.unit), gramsOf(weight, portionUnit(context.unit))];
  return grams.gte(context.limits.minWeightGrams) && grams.lte(context.limits.maxReceivedGrams)
    ? { weight: grams, each }
    : {};
}

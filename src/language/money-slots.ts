// Slots that hold money: prices, sums, what a whole piece cost.
import type { Decimal } from '../core/decimal.ts';
import { perLbFrom } from '../core/money.ts';
import type { WeightUnit } from '../core/quantity.ts';
import { exactAmounts } from './amount.ts';
import { prices, sums } from './price.ts';
import { COST } from './reading.ts';
import { impossible, type SlotContext, type SlotReader } from './slot.ts';

export function priceReader(context: SlotContext, least: Decimal): SlotReader {
  const bareOther: readonly WeightUnit[] = context.unit === 'lb' ? ['kg', 'g'] : ['lb', 'oz'];
  return (tokens, at) =>
    prices(context, tokens, at).map((each) => {
      const perLb = perLbFrom(each.value.amount, each.value.per ?? context.unit);
      return impossible(
        { ...each, value: perLb, per: each.value.per, bareOther },
        perLb.gte(least) && perLb.lte(context.limits.maxPricePerLb),
      );
    });
}

export const sumReader =
  (context: SlotContext, most: Decimal): SlotReader =>
  (tokens, at) =>
    sums(context, tokens, at).map((each) =>
      impossible(each, !each.value.isNegative() && each.value.lte(most)),
    );

/** What a whole piece cost. Spoken "two eleven" would be 2.11 or 211. */
export function totalReader(context: SlotContext): SlotReader {
  const read = sumReader(context, context.limits.maxSum);
  return (tokens, at) =>
    read(tokens, at).map((each) => {
      const value = each.value as Decimal;
      const plain = exactAmounts(context.numbers, tokens, at).some(
        (exact) => exact.end === each.end && exact.value.eq(value),
      );
      const named = tokens
        .slice(at, each.end)
        .some((token) => context.units.whole.has(token.text) || context.units.sign.has(token.text));
      const small = value.lt(10) && !value.isInteger() && !plain && !named;
      return small
        ? { ...each, cost: each.cost + COST.doubt, doubt: 'number' }
        : impossible(each, value.gt(0));
    });
}

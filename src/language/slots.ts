// The kinds of slots that a sentence can have, and how each reads its tokens: a number is read by its slot.
import type { BareNumber } from '../core/entry.ts';
import { decimal, type Decimal } from '../core/decimal.ts';
import { perLbFrom } from '../core/money.ts';
import { type KitchenUnit, portionUnit, toGrams, type WeightUnit } from '../core/quantity.ts';
import { amounts, exactAmounts } from './amount.ts';
import { wholes } from './cardinal.ts';
import { durations } from './duration.ts';
import { lists } from './list.ts';
import { oncePerPlace } from './once.ts';
import { prices, sums } from './price.ts';
import { COST, follows, type Reading } from './reading.ts';
import type { Token } from './token.ts';
import { gramsOf, type SpokenWeight, weights, type WeightWords } from './weight.ts';

export type SlotValue = string | number | Decimal | readonly Decimal[] | BareNumber;

/** A read slot. `unit` and `per` are the units that were said beside it. */
export interface SlotReading extends Reading<SlotValue> {
  readonly unit?: WeightUnit;
  readonly per?: WeightUnit;
  /** Of a price without a unit: the units of the system that the kitchen does not use. */
  readonly bareOther?: readonly WeightUnit[];
  /** Of free text: the token that it begins with. */
  readonly from?: number;
  /** A name that is in no list. */
  readonly free?: true;
}

/** What no scale, price list or kitchen could show; in grams, per lb, per piece, in minutes. */
export interface Limits {
  readonly maxReceivedGrams: Decimal;
  readonly maxPortionGrams: Decimal;
  readonly minPortionGrams: Decimal;
  readonly maxPricePerLb: Decimal;
  readonly maxSum: Decimal;
  readonly maxPieces: number;
  readonly maxCount: number;
  readonly maxMinutes: number;
}

export interface SlotContext extends WeightWords {
  readonly unit: KitchenUnit;
  readonly limits: Limits;
}

export type SlotReader = (tokens: readonly Token[], at: number) => readonly SlotReading[];

const impossible = (reading: SlotReading, possible: boolean): SlotReading =>
  possible || reading.doubt !== undefined ? reading : { ...reading, cost: reading.cost + COST.doubt, doubt: 'impossible' };

/** Several types of slots filter what one reader read. */
function once(read: SlotReader): SlotReader {
  const remembering = oncePerPlace((_: object, tokens, at) => read(tokens, at));
  return (tokens, at) => remembering(read, tokens, at);
}

/** The readers of all slots that hold a number, by the name of their type. */
export function numberReaders(context: SlotContext): Readonly<Record<string, SlotReader>> {
  const weight = once(weightReader(context, context.unit));
  const size = once(sizeReader(context, false));
  const price = once(priceReader(context, decimal('0.000001')));
  return {
    weight,
    unitWeight: (tokens, at) => weight(tokens, at).filter((each) => each.unit !== undefined),
    clearWeight: (tokens, at) => weight(tokens, at).filter((each) => each.unit !== undefined || hasPoint(context, tokens.slice(at, each.end))),
    size,
    sizeOrTotal: sizeReader(context, true),
    unitSize: (tokens, at) => size(tokens, at).filter((each) => each.unit !== undefined),
    price,
    markedPrice: (tokens, at) => price(tokens, at).filter((each) => each.per !== undefined || context.units.sign.has(tokens[at]?.text ?? '') || namesMoney(context, tokens.slice(at, each.end))),
    plural: pluralReader(context),
    credit: priceReader(context, decimal('0')),
    sum: sumReader(context, context.limits.maxSum),
    small: sumReader(context, context.limits.maxPricePerLb),
    total: totalReader(context),
    count: countReader(context, context.limits.maxCount),
    pieces: countReader(context, context.limits.maxPieces),
    minutes: (tokens, at) => durations(context, tokens, at).map((each) => impossible(each, each.value.gt(0) && each.value.lte(context.limits.maxMinutes))),
    number: (tokens, at) => amounts(context.numbers, tokens, at).map((each) => impossible(each, each.value.gt(0))),
    list: listReader(context),
    bare: (tokens, at) => bareNumbers(context, tokens, at),
    answer: (tokens, at) => [...bareNumbers(context, tokens, at), ...durations(context, tokens, at).map((each) => ({ ...each, value: { minutes: each.value } }))],
  };
}

const namesMoney = ({ units }: SlotContext, tokens: readonly Token[]): boolean =>
  tokens.some((token) => units.whole.has(token.text) || units.cent.has(token.text));

/** "fourteens", "twelves": portions of that size. */
function pluralReader(context: SlotContext): SlotReader {
  const size = sizeReader(context, false);
  return (tokens, at) => {
    const token = tokens[at];
    if (token?.kind !== 'word' || !token.text.endsWith('s')) return [];
    const singular = [token.text.replace(/s$/, ''), token.text.replace(/es$/, '')];
    return singular.flatMap((text) => size([{ ...token, text }], 0)).map((each) => ({ ...each, end: at + 1 }));
  };
}

/** A decimal point, said or typed: nobody in a dining room speaks so. */
const hasPoint = (context: SlotContext, tokens: readonly Token[]): boolean =>
  tokens.some((token) => (token.kind === 'figure' && token.text.includes('.')) || context.numbers.words.point.has(token.text));

function weightReader(context: SlotContext, bare: WeightUnit): SlotReader {
  return (tokens, at) =>
    weights(context, tokens, at).map((each) => {
      const grams = gramsOf(each.value, bare);
      return impossible({ ...each, value: grams, unit: each.value.unit }, grams.gt(0) && grams.lte(context.limits.maxReceivedGrams));
    });
}

/** `wide`: a size in pounds or kilograms may be the weight of all portions; what it is, the intent settles. */
function sizeReader(context: SlotContext, wide: boolean): SlotReader {
  const bare = portionUnit(context.unit);
  const { minPortionGrams, maxPortionGrams, maxReceivedGrams } = context.limits;
  return (tokens, at) =>
    weights(context, tokens, at).map((each) => {
      const { unit } = each.value;
      const grams = gramsOf(each.value, bare);
      const most = wide && (unit === 'lb' || unit === 'kg') ? maxReceivedGrams : maxPortionGrams;
      return impossible({ ...each, value: grams, unit }, grams.gte(minPortionGrams) && grams.lte(most));
    });
}

function priceReader(context: SlotContext, least: Decimal): SlotReader {
  const bareOther: readonly WeightUnit[] = context.unit === 'lb' ? ['kg', 'g'] : ['lb', 'oz'];
  return (tokens, at) =>
    prices(context, tokens, at).map((each) => {
      const perLb = perLbFrom(each.value.amount, each.value.per ?? context.unit);
      return impossible({ ...each, value: perLb, per: each.value.per, bareOther }, perLb.gte(least) && perLb.lte(context.limits.maxPricePerLb));
    });
}

const sumReader =
  (context: SlotContext, most: Decimal): SlotReader =>
  (tokens, at) =>
    sums(context, tokens, at).map((each) => impossible(each, !each.value.isNegative() && each.value.lte(most)));

/** What a whole piece cost. Spoken "two eleven" would be 2.11 or 211. */
function totalReader(context: SlotContext): SlotReader {
  const read = sumReader(context, context.limits.maxSum);
  return (tokens, at) =>
    read(tokens, at).map((each) => {
      const value = each.value as Decimal;
      const plain = exactAmounts(context.numbers, tokens, at).some((exact) => exact.end === each.end && exact.value.eq(value));
      const named = tokens.slice(at, each.end).some((token) => context.units.whole.has(token.text) || context.units.sign.has(token.text));
      const small = value.lt(10) && !value.isInteger() && !plain && !named;
      return small ? { ...each, cost: each.cost + COST.doubt, doubt: 'number' } : impossible(each, value.gt(0));
    });
}

function countReader(context: SlotContext, most: number): SlotReader {
  const { numbers } = context;
  return (tokens, at) => {
    const said = [...wholes(numbers, tokens, at), ...dozens(context, tokens, at)];
    const read = said.map((each): SlotReading => impossible({ ...each }, each.value >= 1 && each.value <= most));
    const token = tokens[at];
    const spoken = token?.kind === 'word' ? exactAmounts(numbers, tokens, at).filter((each) => !each.value.isInteger()) : [];
    const parts = spoken.map((each): SlotReading => ({ value: 0, end: each.end, cost: COST.doubt, doubt: 'impossible' }));
    const broken = token?.kind === 'figure' && (token.garbled || token.text.includes('.'));
    return broken ? [{ value: 0, end: at + 1, cost: COST.doubt, doubt: 'impossible' }] : [...read, ...parts];
  };
}

/** "a dozen", "two dozen", "half a dozen". */
function dozens({ numbers }: SlotContext, tokens: readonly Token[], at: number): readonly Reading<number>[] {
  const { one, dozen, fractions } = numbers.words;
  const first = tokens[at]?.text ?? '';
  const leads: { value: number; end: number }[] = wholes(numbers, tokens, at).map(({ value, end }) => ({ value, end }));
  if (one.has(first)) leads.push({ value: 1, end: at + 1 });
  const half = fractions.get(first);
  if (half?.eq('0.5') === true) leads.push({ value: 0.5, end: one.has(follows(tokens, at + 1)?.text ?? '') ? at + 2 : at + 1 });
  return leads.flatMap(({ value, end }) => {
    const many = dozen.get(follows(tokens, end)?.text ?? '');
    return many === undefined ? [] : [{ value: value * many, end: end + 1, cost: 0 }];
  });
}

function listReader(context: SlotContext): SlotReader {
  const bare = portionUnit(context.unit);
  const { minPortionGrams, maxPortionGrams } = context.limits;
  return (tokens, at) =>
    lists(context, tokens, at).map((each) => {
      const grams = each.value.amounts.map((amount) => toGrams(amount, each.value.unit ?? bare));
      const possible = grams.every((one) => one.gte(minPortionGrams) && one.lte(maxPortionGrams));
      return impossible({ ...each, value: grams }, possible);
    });
}

/** A number that no sentence tells the sense of: every reading of the same words that is clear. */
function bareNumbers(context: SlotContext, tokens: readonly Token[], at: number): readonly SlotReading[] {
  const found = new Map<number, { value: BareNumber; cost: number }>();
  const add = (end: number, value: BareNumber, cost: number): void => {
    if (Object.keys(value).length === 0) return;
    const known = found.get(end);
    found.set(end, { value: { ...value, ...known?.value }, cost: Math.min(cost, known?.cost ?? cost) });
  };
  for (const each of weights(context, tokens, at)) if (each.doubt === undefined) add(each.end, asWeight(context, each.value), each.cost);
  for (const each of wholes(context.numbers, tokens, at)) if (each.value > 0) add(each.end, { count: each.value, minutes: decimal(String(each.value)) }, each.cost);
  for (const each of prices(context, tokens, at)) {
    if (each.doubt !== undefined || !each.value.amount.gt(0) || each.value.amount.gt(context.limits.maxSum)) continue;
    const price = perLbFrom(each.value.amount, each.value.per ?? context.unit);
    add(each.end, each.value.per === undefined ? { price, money: each.value.amount } : { price }, each.cost);
  }
  const token = tokens[at];
  if (found.size === 0 && token?.kind === 'figure') return [{ value: {}, end: at + 1, cost: COST.doubt, doubt: 'impossible' }];
  return [...found].map(([end, each]) => ({ ...each, cost: each.cost + COST.entry, end }));
}

function asWeight(context: SlotContext, weight: SpokenWeight): BareNumber {
  const [grams, each] = [gramsOf(weight, context.unit), gramsOf(weight, portionUnit(context.unit))];
  return grams.gt(0) && grams.lte(context.limits.maxReceivedGrams) ? { weight: grams, each } : {};
}

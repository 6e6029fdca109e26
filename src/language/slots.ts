// The kinds of slots that a sentence can have, and how each reads its tokens: a number is read by its slot.
import { decimal, type Decimal } from '../core/decimal.ts';
import { portionUnit, toGrams, type WeightUnit } from '../core/quantity.ts';
import { amounts, exactAmounts } from './amount.ts';
import { bareNumbers } from './bare-number.ts';
import { countReader } from './count-slot.ts';
import { degreeReader, degreeReaders } from './degrees.ts';
import { durations } from './duration.ts';
import { lists } from './list.ts';
import { priceReader, sumReader, totalReader } from './money-slots.ts';
import { once } from './once.ts';
import { impossible, type SlotContext, type SlotReader } from './slot.ts';
import type { Token } from './token.ts';
import { gramsOf, weights } from './weight.ts';

/** The readers of all slots that hold a number, by the name of their type. */
export function numberReaders(context: SlotContext): Readonly<Record<string, SlotReader>> {
  const weight = once(weightReader(context, context.unit));
  const size = once(sizeReader(context, false));
  const sizeOrTotal = once(sizeReader(context, true));
  const price = once(priceReader(context, decimal('0.000001')));
  const degrees = once(degreeReader(context));
  const bare = once((tokens, at) => bareNumbers({ context, degrees }, tokens, at));
  return {
    weight,
    unitWeight: (tokens, at) => weight(tokens, at).filter((each) => each.unit !== undefined),
    /** With a unit behind all of it: in "22 lb 14" the 14 may be ounces or a price. */
    saidWeight: (tokens, at) =>
      weight(tokens, at).filter(({ unit, end }) => unit !== undefined && !endsBare(context, tokens, end)),
    clearWeight: (tokens, at) =>
      weight(tokens, at).filter(
        (each) => each.unit !== undefined || hasPoint(context, tokens.slice(at, each.end)),
      ),
    size,
    sizeOrTotal,
    unitSizeOrTotal: (tokens, at) => sizeOrTotal(tokens, at).filter((each) => each.unit !== undefined),
    unitSize: (tokens, at) => size(tokens, at).filter((each) => each.unit !== undefined),
    /** With a unit, one that a portion can have, and not "a pound": behind a number that is a price. */
    plainSize: (tokens, at) =>
      context.numbers.words.one.has(tokens[at]?.text ?? '')
        ? []
        : size(tokens, at).filter((each) => each.unit !== undefined && each.doubt === undefined),
    price,
    markedPrice: (tokens, at) =>
      price(tokens, at).filter(
        (each) =>
          each.per !== undefined ||
          context.units.sign.has(tokens[at]?.text ?? '') ||
          namesMoney(context, tokens.slice(at, each.end)),
      ),
    centPrice: (tokens, at) =>
      price(tokens, at).filter((each) => isInCents(context, tokens.slice(at, each.end))),
    bareCents: (tokens, at) =>
      price(tokens, at).filter(
        (each) => each.per === undefined && isInCents(context, tokens.slice(at, each.end)),
      ),
    perPrice: (tokens, at) => price(tokens, at).filter((each) => each.per !== undefined),
    plural: pluralReader(context),
    credit: priceReader(context, decimal('0')),
    sum: sumReader(context, context.limits.maxSum),
    small: sumReader(context, context.limits.maxPricePerLb),
    total: totalReader(context),
    count: countReader(context, context.limits.maxCount),
    pieces: countReader(context, context.limits.maxPieces),
    minutes: (tokens, at) =>
      durations(context, tokens, at).map((each) =>
        impossible(each, each.value.gt(0) && each.value.lte(context.limits.maxMinutes)),
      ),
    /** A setting is a text. */
    wholeMinutes: (tokens, at) =>
      durations(context, tokens, at)
        .filter((each) => each.value.isInteger())
        .map((each) => ({ ...each, value: each.value.toString() })),
    wholeNumber: (tokens, at) =>
      countReader(context, context.limits.maxCount)(tokens, at).map((each) => ({
        ...each,
        value: String(each.value as number),
      })),
    number: (tokens, at) =>
      amounts(context.numbers, tokens, at).map((each) => impossible(each, each.value.gt(0))),
    list: listReader(context),
    plainList: plainListReader(context),
    ...degreeReaders(degrees),
    bare,
    answer: (tokens, at) => [
      ...bare(tokens, at),
      ...durations(context, tokens, at).map((each) => ({ ...each, value: { minutes: each.value } })),
    ],
  };
}

const namesMoney = ({ units }: SlotContext, tokens: readonly Token[]): boolean =>
  tokens.some((token) => units.whole.has(token.text) || units.cent.has(token.text));

/** To the cent as a price list has it ("7.95", "seven ninety five"), and no weight: those have one decimal, or say "point". */
function isInCents(context: SlotContext, tokens: readonly Token[]): boolean {
  const [first] = tokens;
  if (first?.kind === 'figure') return /^\d+\.\d\d$/.test(first.text);
  return (
    tokens.length > 1 && !exactAmounts(context.numbers, tokens, 0).some(({ end }) => end === tokens.length)
  );
}

/** "fourteens", "twelves": portions of that size. */
function pluralReader(context: SlotContext): SlotReader {
  const size = sizeReader(context, false);
  return (tokens, at) => {
    const token = tokens[at];
    if (token?.kind !== 'word' || !token.text.endsWith('s')) return [];
    const singular = [token.text.replace(/s$/, ''), token.text.replace(/es$/, '')];
    return singular
      .flatMap((text) => size([{ ...token, text }], 0))
      .map((each) => ({ ...each, end: at + 1 }));
  };
}

/** A decimal point, said or typed: nobody in a dining room speaks so. */
const hasPoint = (context: SlotContext, tokens: readonly Token[]): boolean =>
  tokens.some(
    (token) =>
      (token.kind === 'figure' && token.text.includes('.')) || context.numbers.words.point.has(token.text),
  );

function weightReader(context: SlotContext, bare: WeightUnit): SlotReader {
  return (tokens, at) =>
    weights(context, tokens, at).map((each) => {
      const grams = gramsOf(each.value, bare);
      return impossible(
        { ...each, value: grams, unit: each.value.unit },
        grams.gte(context.limits.minWeightGrams) && grams.lte(context.limits.maxReceivedGrams),
      );
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

/** From so many figures on, a list without a word for what it is. */
const PLAIN_LIST = 3;

/** Figures as a scale shows them, most with their point, or each with its unit: they need no word to be a list of weights. */
function plainListReader(context: SlotContext): SlotReader {
  const read = listReader(context);
  return (tokens, at) =>
    read(tokens, at).filter(({ value, end, doubt }) => {
      const length = (value as readonly Decimal[]).length;
      const list = tokens.slice(at, end);
      const points = list.filter((token) => hasPoint(context, [token])).length;
      const units = list.filter((token) => context.units.weight.has(token.text)).length;
      return (
        doubt === undefined &&
        length >= PLAIN_LIST &&
        (points === length || units === length || (units === 0 && points * 2 > length))
      );
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

const endsBare = ({ units, numbers }: SlotContext, tokens: readonly Token[], end: number): boolean =>
  units.weight.has(tokens[end - 2]?.text ?? '') && amounts(numbers, tokens, end - 1).length > 0;

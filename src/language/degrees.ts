// Temperatures as they are said: "166", "one sixty six", "74 c", "forty one point five degrees". °F inside.
import { decimal, type Decimal } from '../core/decimal.ts';
import { degreeUnit, isPossible, toF } from '../core/heat.ts';
import { exactAmounts } from './amount.ts';
import { digitAt, wholes } from './cardinal.ts';
import { follows } from './reading.ts';
import { impossible, type SlotContext, type SlotReader, type SlotReading } from './slot.ts';
import type { Token } from './token.ts';

interface Spoken {
  readonly value: Decimal;
  readonly end: number;
  readonly cost: number;
  readonly doubt?: string;
}

/** `degrees`: with or without a unit. `markedDegrees`: with one. `hotDegrees`: as hot as nothing else that is said of a burger. */
export function degreeReaders(read: DegreeReader): Readonly<Record<string, SlotReader>> {
  return {
    degrees: (tokens, at) => read(tokens, at).map(({ marked: _, ...reading }) => reading),
    markedDegrees: (tokens, at) =>
      read(tokens, at).flatMap(({ marked, ...reading }) => (marked ? [reading] : [])),
    hotDegrees: (tokens, at) =>
      read(tokens, at).flatMap(({ marked, ...reading }) => (marked || isHot(reading) ? [reading] : [])),
  };
}

const HOT_F = decimal('100');
const isHot = ({ value, doubt }: SlotReading): boolean =>
  doubt === undefined && (value as Decimal).gte(HOT_F);

/** `marked`: a unit was said. */
type Marked = SlotReading & { readonly marked: boolean };

export type DegreeReader = (tokens: readonly Token[], at: number) => readonly Marked[];

export function degreeReader(context: SlotContext): DegreeReader {
  const own = degreeUnit(context.unit);
  const { degree } = context.units;
  return (tokens, at) =>
    [...exactAmounts(context.numbers, tokens, at), ...hundreds(context, tokens, at)].flatMap(
      (amount): readonly Marked[] => {
        const made = (unit: 'F' | 'C', end: number, marked: boolean): Marked => {
          const value = toF(amount.value, unit);
          return { ...impossible({ ...amount, value, end }, isPossible(value)), marked };
        };
        const word = degree.word.has(follows(tokens, amount.end)?.text ?? '') ? 1 : 0;
        const after = follows(tokens, amount.end + word)?.text ?? '';
        const unit = degree.f.has(after) ? 'F' : degree.c.has(after) ? 'C' : undefined;
        if (unit !== undefined) return [made(unit, amount.end + word + 1, true)];
        return [made(own, amount.end + word, word > 0)];
      },
    );
}

/** "one sixty six" is 166, "one oh five" 105, "one four five" 145: nobody says the hundred. */
function hundreds({ numbers }: SlotContext, tokens: readonly Token[], at: number): readonly Spoken[] {
  const first = digitAt(numbers, tokens[at]);
  if (first === undefined || first.value < 1 || first.value > 2 || follows(tokens, at + 1) === undefined)
    return [];
  const make = (rest: number, end: number): Spoken => ({
    value: decimal(String(first.value * 100 + rest)),
    end,
    cost: first.cost,
  });
  const pairs = wholes(numbers, tokens, at + 1).flatMap((rest) =>
    rest.form !== 'figure' && rest.value >= 10 && rest.value <= 99 ? [make(rest.value, rest.end)] : [],
  );
  const [tens, ones] = [digitAt(numbers, follows(tokens, at + 1)), digitAt(numbers, follows(tokens, at + 2))];
  return tens === undefined || ones === undefined
    ? pairs
    : [...pairs, make(tens.value * 10 + ones.value, at + 3)];
}

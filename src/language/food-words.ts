// Food beside a temperature: what it is called, as said, by how it must be treated.
import { z } from 'zod';
import { follows } from './reading.ts';
import type { SlotReader, SlotReading } from './slot.ts';

const words = z.array(z.string());

export const foodsSchema = z.strictObject({
  ground: words,
  needled: words,
  poultry: words,
  whole: words,
  trim: words,
  raw: words,
  cooked: words,
});
export type FoodWords = z.output<typeof foodsSchema>;

const LONGEST = 4;

type FoodKind = keyof FoodWords;

/** Kinds that are spoken of in the same sentences. */
const KINDS_OF = {
  groundFood: ['ground'],
  /** Cooked to one temperature all through. */
  throughFood: ['ground', 'needled', 'poultry'],
  wholeFood: ['whole'],
  heatedFood: ['ground', 'needled', 'poultry', 'whole'],
  rawFood: ['trim', 'raw'],
  cookedFood: ['cooked'],
  anyFood: ['ground', 'needled', 'poultry', 'whole', 'trim', 'raw', 'cooked'],
} as const satisfies Readonly<Record<string, readonly FoodKind[]>>;

/** Read as a name alone: where it is of no matter how the food must be treated. */
const NAMES_OF = { pieceFood: ['needled', 'poultry', 'whole'] } as const satisfies Readonly<
  Record<string, readonly FoodKind[]>
>;

export const FOOD_SLOTS = [...Object.keys(KINDS_OF), ...Object.keys(NAMES_OF)];

/** A reader for each of these; of the first it says with the name how the food must be treated. */
export function foodReaders(foods: FoodWords): Readonly<Record<string, SlotReader>> {
  const kindOf = new Map(
    (Object.keys(foods) as FoodKind[]).flatMap((kind) => foods[kind].map((name) => [name, kind] as const)),
  );
  const reader = ([slot, kinds]: readonly [string, readonly FoodKind[]]) =>
    [slot, phraseReader(new Set(kinds.flatMap((kind) => foods[kind])))] as const;
  const treated = ([slot, read]: readonly [string, SlotReader]) =>
    [slot, withTreatment(read, kindOf)] as const;
  return Object.fromEntries([
    ...Object.entries(NAMES_OF).map(reader),
    ...Object.entries(KINDS_OF).map(reader).map(treated),
  ]);
}

const withTreatment =
  (read: SlotReader, kindOf: ReadonlyMap<string, FoodKind>): SlotReader =>
  (tokens, at) =>
    read(tokens, at).map((each) => {
      const food = typeof each.value === 'string' ? kindOf.get(each.value) : undefined;
      return food === undefined ? each : { ...each, also: { food } };
    });

const NOTHING: readonly SlotReading[] = [];

/** Most words begin no food: they are told before anything is joined. */
function phraseReader(phrases: ReadonlySet<string>): SlotReader {
  const firsts = new Set([...phrases].map((phrase) => phrase.split(' ')[0]));
  return (tokens, at) => {
    if (!firsts.has(tokens[at]?.text)) return NOTHING;
    const found: SlotReading[] = [];
    const said: string[] = [];
    for (let end = at; end < at + LONGEST; end += 1) {
      const token = end === at ? tokens[at] : follows(tokens, end);
      if (token?.kind !== 'word') break;
      said.push(token.text);
      const value = said.join(' ');
      if (phrases.has(value)) found.push({ value, end: end + 1, cost: 0 });
    }
    return found;
  };
}

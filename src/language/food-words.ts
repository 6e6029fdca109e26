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

/** A reader for each kind of food: "groundFood", "wholeFood" … */
export const foodReaders = (foods: FoodWords): Readonly<Record<string, SlotReader>> =>
  Object.fromEntries(
    Object.entries(foods).map(([kind, names]) => [`${kind}Food`, phraseReader(new Set(names))]),
  );

export const FOOD_SLOTS = Object.keys(foodsSchema.shape).map((kind) => `${kind}Food`);

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

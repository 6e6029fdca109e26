// The unit words of a language, from its units.yaml.
import { z } from 'zod';
import type { WeightUnit } from '../core/quantity.ts';

const words = z.array(z.string());

export const unitsSchema = z.strictObject({
  weight: z.strictObject({ lb: words, oz: words, kg: words, g: words }),
  per: words,
  money: z.strictObject({ sign: words, whole: words, cent: words }),
  time: z.strictObject({ minute: words, hour: words }),
  degree: z.strictObject({ word: words, f: words, c: words }),
  percent: words,
  of: words,
});
export type UnitsData = z.infer<typeof unitsSchema>;

export interface UnitWords {
  readonly weight: ReadonlyMap<string, WeightUnit>;
  readonly per: ReadonlySet<string>;
  readonly sign: ReadonlySet<string>;
  readonly whole: ReadonlySet<string>;
  readonly cent: ReadonlySet<string>;
  readonly minute: ReadonlySet<string>;
  readonly hour: ReadonlySet<string>;
  readonly degree: Readonly<Record<'word' | 'f' | 'c', ReadonlySet<string>>>;
  readonly percent: ReadonlySet<string>;
  readonly of: ReadonlySet<string>;
}

export function unitWords(data: UnitsData): UnitWords {
  const weight = new Map<string, WeightUnit>();
  for (const [unit, names] of Object.entries(data.weight))
    for (const name of names) weight.set(name, unit as WeightUnit);
  return {
    weight,
    per: new Set(data.per),
    sign: new Set(data.money.sign),
    whole: new Set(data.money.whole),
    cent: new Set(data.money.cent),
    minute: new Set(data.time.minute),
    hour: new Set(data.time.hour),
    degree: { word: new Set(data.degree.word), f: new Set(data.degree.f), c: new Set(data.degree.c) },
    percent: new Set(data.percent),
    of: new Set(data.of),
  };
}

/** Every word that is a unit: a name never holds one. */
export const isUnitWord = (units: UnitWords, text: string): boolean =>
  units.weight.has(text) ||
  units.whole.has(text) ||
  units.cent.has(text) ||
  units.minute.has(text) ||
  units.hour.has(text);

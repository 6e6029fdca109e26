// The words of time of a language: the form of its times.yaml.
import { z } from 'zod';

const words = z.array(z.string());

export const timesSchema = z.strictObject({
  begins: words,
  goesOn: words,
  and: words,
  one: words,
  half: words,
  quarter: words,
  past: words,
  to: words,
  minute: words,
  hour: words,
  at: z.string(),
  oclock: words,
  noon: words,
  articles: words,
  halves: z.strictObject({ am: words, pm: words }),
  daily: words,
  dailyIn: z.record(z.string(), z.string()),
  each: words,
  weekdays: words,
  plural: z.string(),
  days: words,
  partsOfDay: words,
  sure: words,
  todays: words,
  onDay: words,
  ordinal: z.string().transform((pattern) => new RegExp(pattern)),
  afterTomorrow: words,
  every: words,
  countedBy: words,
  units: words,
  keptUnits: words,
  otherRepeats: words,
  within: words,
  partOf: z.strictObject({ am: words, pm: words }),
  joints: words,
  talk: words,
});
export type TimeWords = z.output<typeof timesSchema>;

// The words of time of a language: the form of its times.yaml.
import { z } from 'zod';

const words = z.array(z.string());
/** Looked up at every place of a line. */
const wordSet = words.transform((list): ReadonlySet<string> => new Set(list));

export const timesSchema = z.strictObject({
  begins: wordSet,
  goesOn: wordSet,
  leadsOn: wordSet,
  and: words,
  one: words,
  half: words,
  quarter: words,
  past: words,
  to: words,
  minute: words,
  hour: words,
  /** Words that stand for it before an hour: "a reminder for 3". */
  insteadOfAt: words,
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
  dayWords: words,
  months: z.record(z.string(), z.number().int().min(1).max(12)),
  ordinals: z.record(z.string(), z.number().int().min(1).max(31)),
  ordinalEndings: words,
  of: words,
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

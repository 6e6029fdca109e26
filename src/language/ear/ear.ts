// What the ear of a language listens for, as data: which kinds in which words, how slots are spoken, how names sound.
import { join } from 'node:path';
import { z } from 'zod';
import { readData } from '../language.ts';

const words = z.array(z.string());

const kindSchema = z.strictObject({
  begins: words,
  words,
  most: z.number().int().optional(),
  apart: words.default([]),
  rare: z.boolean().default(false),
  slots: words,
  article: z.boolean().optional(),
  less: z
    .strictObject({ idle: z.number(), open: z.number(), asked: z.number(), alone: z.number() })
    .partial(),
});

const hearingSchema = z.strictObject({
  kinds: z.record(z.string(), kindSchema),
  slots: z.record(z.string(), z.string()),
  rules: z.record(z.string(), z.string()),
  seldom: z.record(z.string(), z.number()),
  near: z.strictObject({
    digits: words,
    teens: words,
    tens: words,
    zeros: words,
    point: z.string(),
    units: words,
    alike: words,
    likeNames: words,
  }),
  unlikely: z.record(z.string(), words),
  often: words,
  alsoSaid: words,
});

const soundsSchema = z.strictObject({
  words: z.record(z.string(), words),
  letters: z.record(z.string(), z.string()),
});

export type EarKind = z.output<typeof kindSchema>;
export type Sounds = z.output<typeof soundsSchema>;
export type Ear = z.output<typeof hearingSchema> & { readonly sounds: Sounds };

/** Reads it from the folder of a language. Throws a DataFault that names file and line where it is wrong. */
export function loadEar(folder: string, code: string): Ear {
  const home = join(folder, code);
  const hearing = readData(join(home, 'hearing.yaml'), hearingSchema);
  return { ...hearing, sounds: readData(join(home, 'pronunciations.yaml'), soundsSchema) };
}

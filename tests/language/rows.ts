// Rows of tests/language/sentences: a line, and what it must give.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { z } from 'zod';

const FOLDER = fileURLToPath(new URL('sentences', import.meta.url));

const entry = z.record(z.string(), z.union([z.string(), z.number().int(), z.boolean(), z.array(z.string())]));

/** `gives`: these entries and, without `asks`, no question. `asks` alone: no entry and a question. `silent`: neither.
 * `never`: no entry, asked or not. */
const rowSchema = z
  .strictObject({
    typed: z.string().optional(),
    said: z.string().optional(),
    unit: z.enum(['lb', 'kg']).default('lb'),
    gives: z.array(entry).min(1).optional(),
    asks: z.literal(true).optional(),
    silent: z.literal(true).optional(),
    never: z.literal(true).optional(),
  })
  .refine((row) => (row.typed === undefined) !== (row.said === undefined), 'typed or said, one of them')
  .refine(
    (row) => [row.gives ?? row.asks, row.silent, row.never].filter((wish) => wish !== undefined).length === 1,
    'one of gives, asks, silent and never, or gives with asks',
  );

export type Row = z.output<typeof rowSchema>;

export const textOf = (row: Row): string => row.typed ?? row.said ?? '';

export interface RowFile {
  /** Language and file name: "en/weigh". */
  readonly name: string;
  readonly language: string;
  readonly rows: readonly Row[];
}

/** All files of all languages, in a steady order. */
export function rowFiles(): readonly RowFile[] {
  return readdirSync(FOLDER)
    .sort()
    .flatMap((language) =>
      readdirSync(join(FOLDER, language))
        .sort()
        .map((file) => readRows(language, file)),
    );
}

function readRows(language: string, file: string): RowFile {
  const read = z.array(rowSchema).safeParse(parse(readFileSync(join(FOLDER, language, file), 'utf8')));
  if (!read.success) throw new Error(`${language}/${file}: ${z.prettifyError(read.error)}`);
  return { name: `${language}/${file.replace(/\.yaml$/, '')}`, language, rows: read.data };
}

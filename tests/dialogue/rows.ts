// The shifts of the dialogue as data: what is said, and what each turn and the tests come to.
import { readdirSync, readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { z } from 'zod';

const then = z.strictObject({
  outcome: z.enum(['asked', 'refused', 'recorded', 'answered', 'ignored']),
  /** Exactly these entries. */
  entries: z.array(z.record(z.string(), z.unknown())).optional(),
  /** Words that the reply has, and words that it has not. */
  reply: z.array(z.string()).optional(),
  not: z.array(z.string()).optional(),
});

const row = z.strictObject({
  name: z.string(),
  /** Why the row fails for now, where that is known: such a row has to fail. */
  failing: z.string().optional(),
  kitchen: z.record(z.string(), z.unknown()).optional(),
  turns: z.array(
    z.strictObject({
      typed: z.string().optional(),
      said: z.string().optional(),
      from: z.string().optional(),
      at: z.string().optional(),
      then: then.optional(),
    }),
  ),
  /** What is in the tests, in the order of opening; only the named fields are looked at. */
  tests: z.array(z.record(z.string(), z.unknown())).optional(),
});

export type Row = z.infer<typeof row>;

/** The rows of each file in a folder, by the name of the file. */
export function rowsIn(folder: string): readonly (readonly [file: string, rows: readonly Row[]])[] {
  const files = readdirSync(folder).filter((file) => file.endsWith('.yaml'));
  return files.map((file) => [
    file.replace('.yaml', ''),
    z.array(row).parse(parse(readFileSync(`${folder}/${file}`, 'utf8'))),
  ]);
}

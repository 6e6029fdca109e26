// A written-down shift: a kitchen and its turns, each with the time that it has. Faults name the file and the line.
import { readFileSync } from 'node:fs';
import { isCollection, isMap, isSeq, LineCounter, type Document, parseDocument, type Node } from 'yaml';
import { z } from 'zod';
import { decimal } from '../../core/decimal.ts';
import type { Settings } from '../../core/kitchen.ts';
import type { Role } from '../../core/role.ts';
import { instantOf } from '../../core/local-time.ts';

export interface ShiftTurn {
  readonly text: string;
  readonly from: string;
  /** Local time to the minute, as written. */
  readonly at: string;
  /** The same as a UTC instant. */
  readonly instant: string;
}

export interface Shift {
  readonly settings: Settings;
  readonly roles: ReadonlyMap<string, Role>;
  readonly turns: readonly ShiftTurn[];
}

/** A shift file that can't be read: "file:line: what is wrong". */
export class ShiftFault extends Error {}

const figure = z
  .union([z.string(), z.number()])
  .transform(String)
  .pipe(z.string().regex(/^\d+(\.\d+)?$/, 'is not a figure'))
  .transform((text) => decimal(text));

const kitchenSchema = z.strictObject({
  unit: z.enum(['lb', 'kg']).default('lb'),
  currency: z
    .string()
    .regex(/^[A-Z]{3}$/, 'is no currency code')
    .default('USD'),
  timezone: z
    .string()
    .refine((zone) => instantOf('2000-01-01T00:00', zone) !== undefined, 'is no time zone')
    .default('UTC'),
  language: z.enum(['en']).default('en'),
  laborRatePerHour: figure.optional(),
  laborAvoidable: z.boolean().default(true),
  summaryAt: z
    .string()
    .regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'is no time of day like 22:00')
    .optional(),
  roles: z.record(z.string(), z.enum(['owner', 'lead', 'cutter'])).default({}),
});

const turnSchema = z
  .strictObject({
    at: z
      .string()
      .regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d$/, 'is no local time like 2026-03-06T09:00')
      .optional(),
    from: z.string().min(1).default('cutter'),
    said: z.string().optional(),
    typed: z.string().optional(),
  })
  .refine(
    ({ said, typed }) => (said === undefined) !== (typed === undefined),
    'a turn has either "said" or "typed"',
  );

const MOST_BYTES = 4_000_000;

/** Reads a shift. Throws a ShiftFault. */
export function readShift(path: string): Shift {
  const reader = openFile(path);
  const contents = reader.document.contents;
  if (!isMap(contents)) throw reader.fault(contents, 'a shift has a kitchen and turns');
  const kitchen = reader.read(contents.get('kitchen', true), kitchenSchema, {});
  const turns = contents.get('turns', true);
  const extra = contents.items.find(({ key }) => !['kitchen', 'turns'].includes(String(key)));
  if (extra !== undefined) throw reader.fault(extra.key, `"${String(extra.key)}" is no part of a shift`);
  if (!isSeq(turns)) throw reader.fault(contents, 'a shift has a list of turns');
  const { roles, ...settings } = kitchen;
  const played = readTurns(reader, turns.items as Node[], settings.timezone);
  const [first] = played;
  return {
    settings: first === undefined ? settings : { ...settings, openedAt: first.instant },
    roles: new Map(Object.entries(roles)),
    turns: played,
  };
}

function readTurns(reader: FileReader, items: readonly Node[], timezone: string): readonly ShiftTurn[] {
  const turns: ShiftTurn[] = [];
  for (const node of items) {
    const { at: written, from, said, typed } = reader.read(node, turnSchema);
    const at = written ?? turns.at(-1)?.at;
    if (at === undefined) throw reader.fault(node, 'the first turn needs a time ("at")');
    const instant = instantOf(at, timezone);
    if (instant === undefined) throw reader.fault(node, `${at} in ${timezone} is no time`);
    const before = turns.at(-1)?.instant;
    if (before !== undefined && instant < before) throw reader.fault(node, 'the time goes backwards');
    turns.push({ text: said ?? typed ?? '', from, at, instant });
  }
  return turns;
}

interface FileReader {
  readonly document: Document;
  readonly fault: (node: unknown, what: string) => ShiftFault;
  readonly read: <Schema extends z.ZodType>(
    node: Node | undefined,
    schema: Schema,
    otherwise?: unknown,
  ) => z.output<Schema>;
}

function openFile(path: string): FileReader {
  const lines = new LineCounter();
  const document = parseDocument(textOf(path), { lineCounter: lines, prettyErrors: false });
  const lineAt = (offset: number | undefined): number =>
    offset === undefined ? 1 : lines.linePos(offset).line;
  const fault = (node: unknown, what: string): ShiftFault =>
    new ShiftFault(`${path}:${lineAt((node as Node | null)?.range?.[0])}: ${what}`);
  const [error] = document.errors;
  if (error !== undefined)
    throw new ShiftFault(`${path}:${lineAt(error.pos[0])}: ${error.message.split('\n')[0] ?? ''}`);
  const plain = (node: Node): unknown => {
    try {
      return node.toJS(document);
    } catch (error) {
      // Aliases that repeat each other without end, or name nothing.
      if (error instanceof ReferenceError) throw fault(node, error.message);
      throw error;
    }
  };
  const read: FileReader['read'] = (node, schema, otherwise) => {
    const result = schema.safeParse(node === undefined ? otherwise : plain(node));
    if (result.success) return result.data;
    const [issue] = result.error.issues;
    throw fault(
      faultyNode(node, issue),
      `${issue?.path.join('.') ?? ''} ${issue?.message ?? 'is wrong'}`.trim(),
    );
  };
  return { document, fault, read };
}

/** Where an issue is: the value, the key that nobody knows, or else the whole. */
function faultyNode(node: Node | undefined, issue: z.core.$ZodIssue | undefined): unknown {
  if (issue === undefined || !isCollection(node)) return node;
  const unknown = issue.code === 'unrecognized_keys' ? issue.keys[0] : undefined;
  const key = isMap(node) ? node.items.find((pair) => String(pair.key) === unknown)?.key : undefined;
  return key ?? node.getIn(issue.path, true) ?? node;
}

function textOf(path: string): string {
  try {
    const bytes = readFileSync(path);
    if (bytes.length > MOST_BYTES) throw new ShiftFault(`${path}:1: the file is too large for a shift`);
    return bytes.toString('utf8');
  } catch (error) {
    if (error instanceof ShiftFault) throw error;
    throw new ShiftFault(`${path}:1: the file can't be read`, { cause: error });
  }
}

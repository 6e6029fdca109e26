// `hear FILE... [--json] [--context SHIFT.yaml]`: each file as a voice note, by itself or as the next turn of a shift.
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import type { Hearing, HearNote } from '../../app/ports/hearing.ts';
import type { OpenScratch, Scratch } from '../../app/ports/scratch.ts';
import type { HeardAs, Table } from '../../app/ports/table.ts';
import type { JudgeLine, Judged } from '../../app/ports/words.ts';
import type { Reply } from '../../core/reply.ts';
import type { Output } from './command.ts';
import { messageOf, playInto } from './play.ts';
import { readShift, type Shift, ShiftFault } from './shift-file.ts';

export interface HearParts extends Output {
  readonly open: OpenScratch;
  /** The ear of a kitchen, and one with no kitchen behind it. */
  readonly earOf: (table?: Pick<Table, 'kitchen' | 'questionFor'>) => HearNote;
  readonly judge: JudgeLine;
  readonly words: (reply: Reply) => string;
}

const USAGE = 'hear FILE.ogg... [--json] [--context SHIFT.yaml] [--from NAME]';

/** Exit status: 0, also where notes were rejected; 2 where the options, the context or a file can't be read. */
export async function hearCommand(args: readonly string[], parts: HearParts): Promise<number> {
  const options = optionsOf(args);
  if (options === undefined) {
    parts.err(USAGE);
    return 2;
  }
  try {
    const setting = options.context === undefined ? alone(parts) : await inContext(parts, options);
    let status = 0;
    for (const file of options.files)
      if (!(await hearFile(parts, { ...setting, ...options, file }))) status = 2;
    return status;
  } catch (error) {
    if (!(error instanceof ShiftFault)) throw error;
    parts.err(error.message);
    return 2;
  }
}

interface Options {
  readonly files: readonly string[];
  readonly json: boolean;
  readonly from: string;
  readonly context?: string;
}

function optionsOf(args: readonly string[]): Options | undefined {
  try {
    const { values, positionals: files } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        json: { type: 'boolean', default: false },
        context: { type: 'string' },
        from: { type: 'string', default: 'cutter' },
      },
    });
    return files.length === 0 ? undefined : { files, ...values };
  } catch {
    return undefined;
  }
}

interface Setting {
  readonly hear: HearNote;
  readonly judge: (text: string, heard: HeardAs) => Promise<Judged>;
}

const alone = ({ earOf, judge }: HearParts): Setting => ({
  hear: earOf(),
  judge: (text, heard) => Promise.resolve(judge(text, heard)),
});

/** Each note as the next turn after the shift; none changes what the next one meets. */
async function inContext({ open, earOf }: HearParts, { context = '', from }: Options): Promise<Setting> {
  const shift = readShift(context);
  const scratch = await open(shift.settings);
  await playInto(scratch, shift);
  return { hear: earOf(scratch), judge: (text, heard) => weighUp(scratch, shift, { from, text, heard }) };
}

async function weighUp(
  scratch: Scratch,
  shift: Shift,
  { from, text, heard }: { from: string; text: string; heard: HeardAs },
): Promise<Judged> {
  const instant = shift.turns.at(-1)?.instant ?? new Date(0).toISOString();
  const { entries, ask } = await scratch.weighUp({
    ...messageOf(shift, { from, instant, text }, 'next'),
    heard,
  });
  return { entries, ask };
}

/** Writes the line of a file. False where the file can't be read. */
async function hearFile(
  parts: HearParts,
  { file, from, json, hear, judge }: Setting & Options & { file: string },
): Promise<boolean> {
  const bytes = bytesOf(file);
  if (bytes === undefined) {
    parts.err(`${file}: the file can't be read`);
    return false;
  }
  const hearing = await hear(bytes, from);
  const judged = hearing.is === 'words' ? await judge(hearing.text, hearing.heard) : NOTHING;
  const line = lineOf(file, hearing, judged);
  parts.out(json ? JSON.stringify(line) : plain(line));
  if (hearing.is === 'trouble') parts.err(`${file}: ${parts.words(hearing.reply)}`);
  return true;
}

const NOTHING: Judged = { entries: [], ask: null };

interface Line extends Judged {
  readonly file: string;
  readonly heard: string;
  readonly confidence: number;
  readonly rejected: boolean;
}

function lineOf(file: string, hearing: Hearing, { entries, ask }: Judged): Line {
  const [heard, confidence] =
    hearing.is === 'trouble' ? ['', 0] : [hearing.text, Number(hearing.heard.confidence.toFixed(3))];
  return { file, heard, confidence, entries, ask, rejected: entries.length === 0 && ask === null };
}

const plain = ({ file, heard, confidence, entries, ask, rejected }: Line): string =>
  `${file}: ${rejected ? '-' : (ask ?? JSON.stringify(entries))} (${confidence}: "${heard}")`;

function bytesOf(file: string): Uint8Array | undefined {
  try {
    return readFileSync(file);
  } catch {
    return undefined;
  }
}

// `parse`: one utterance a line in, one JSON object a line out, by itself or as the next turn of a shift.
import { createInterface } from 'node:readline';
import { parseArgs } from 'node:util';
import type { OpenScratch } from '../../app/ports/scratch.ts';
import type { JudgeLine, Judged } from '../../app/ports/words.ts';
import { instantOf } from '../../core/local-time.ts';
import { messageOf, playInto } from './play.ts';
import { readShift, ShiftFault } from './shift-file.ts';

export interface ParseSetting {
  readonly lang: string;
  readonly unit: 'lb' | 'kg';
  /** Local time to the minute; else it is now. */
  readonly now?: string;
}

export interface ParseParts {
  /** Lines judged by their words, for a language and unit. */
  readonly judge: (setting: ParseSetting) => JudgeLine;
  readonly open: OpenScratch;
  readonly input: NodeJS.ReadableStream;
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}

const USAGE =
  'parse --json [--lang en] [--unit lb|kg] [--spoken] [--now 2026-03-06T09:00] [--context SHIFT.yaml] [--from NAME]';

/** Exit status: 0, or 2 where the options or the context can't be read. */
export async function parseCommand(args: readonly string[], parts: ParseParts): Promise<number> {
  const options = optionsOf(args);
  if (options === undefined) {
    parts.err(USAGE);
    return 2;
  }
  try {
    const judge =
      options.context === undefined
        ? steady(parts.judge(options))
        : await inContext(options.context, parts, options);
    for await (const line of createInterface({ input: parts.input, crlfDelay: Infinity })) {
      const { entries, ask } = await judge(line);
      parts.out(JSON.stringify({ text: line, entries, ask }));
    }
    return 0;
  } catch (error) {
    if (!(error instanceof ShiftFault)) throw error;
    parts.err(error.message);
    return 2;
  }
}

interface Options extends ParseSetting {
  readonly context?: string;
  readonly from: string;
  readonly now?: string;
}

function optionsOf(args: readonly string[]): Options | undefined {
  try {
    const { values } = parseArgs({
      args: [...args],
      options: {
        json: { type: 'boolean' },
        spoken: { type: 'boolean' },
        lang: { type: 'string', default: 'en' },
        unit: { type: 'string', default: 'lb' },
        now: { type: 'string' },
        context: { type: 'string' },
        from: { type: 'string', default: 'cutter' },
      },
    });
    const { lang, unit, now, context, from } = values;
    const readable = lang === 'en' && (unit === 'lb' || unit === 'kg');
    if (!readable || (now !== undefined && instantOf(now, 'UTC') === undefined)) return undefined;
    return { lang, unit, now, context, from };
  } catch {
    return undefined;
  }
}

const steady =
  (judge: JudgeLine) =>
  (line: string): Promise<Judged> =>
    Promise.resolve(judge(line));

/** Each line as the next turn after the shift; none changes what the next one meets. */
async function inContext(
  path: string,
  parts: ParseParts,
  { from, now }: Options,
): Promise<(line: string) => Promise<Judged>> {
  const shift = readShift(path);
  const scratch = await parts.open(shift.settings);
  await playInto(scratch, shift);
  const last = shift.turns.at(-1)?.instant ?? new Date(0).toISOString();
  const instant = now === undefined ? last : (instantOf(now, shift.settings.timezone) ?? last);
  return async (text) => {
    const { entries, ask } = await scratch.weighUp(messageOf(shift, { from, instant, text }, 'next'));
    return { entries, ask };
  };
}

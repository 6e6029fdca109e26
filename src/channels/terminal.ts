// The chat in the terminal: one line, one answer. Piped input is read the same way, one entry a line.
import { randomUUID } from 'node:crypto';
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import type { AnswerFile } from '../app/ports/paper.ts';
import type { Answer, Table } from '../app/ports/table.ts';

export interface TerminalParts {
  readonly table: Table;
  readonly input: NodeJS.ReadableStream & { readonly isTTY?: boolean };
  readonly output: NodeJS.WritableStream;
  /** Said once at the beginning. */
  readonly greeting: string;
  /** Said to a line that holds nothing for us: in a chat of one person nothing else is meant for anybody else. */
  readonly notForMe: string;
  /** The sentence for a trouble of ours or of the store. */
  readonly trouble: (error: unknown) => string;
  /** Keeps a file that goes with an answer, and says where it is, or that it could not be made. */
  readonly keep: (file: AnswerFile) => Promise<string>;
}

const SPEAKER = 'cook';

/** Resolves at the end of the input. */
export async function chat(parts: TerminalParts): Promise<void> {
  const { input, output, greeting } = parts;
  const interactive = input.isTTY === true;
  const lines = createInterface({
    input,
    ...(interactive ? { output, prompt: '> ' } : {}),
    crlfDelay: Infinity,
  });
  if (interactive) write(output, greeting);
  if (interactive) lines.prompt();
  for await (const line of lines) {
    if (line.trim() !== '') write(output, await reply(parts, line));
    if (interactive) lines.prompt();
  }
}

async function reply({ table, notForMe, trouble, keep }: TerminalParts, text: string): Promise<string> {
  try {
    const answer = await table.take({
      id: randomUUID(),
      speaker: SPEAKER,
      at: new Date().toISOString(),
      text,
      role: 'owner',
    });
    return answer.outcome === 'ignored' ? notForMe : await withFiles(answer, keep);
  } catch (error) {
    return trouble(error);
  }
}

async function withFiles({ reply, files = [] }: Answer, keep: TerminalParts['keep']): Promise<string> {
  const kept: string[] = [];
  for (const file of files) kept.push(await keep(file));
  return [reply, ...kept].join('\n');
}

const write = (output: NodeJS.WritableStream, text: string): void => void output.write(`${text}\n`);

/** Writes files into a folder, each in the place of an earlier one of its name. What fails is told, and the answer stands. */
export function fileKeeper(
  folder: string,
  tell: (became: 'written' | 'failed', what: string) => string,
): TerminalParts['keep'] {
  return async ({ name, bytes }) => {
    try {
      const place = join(folder, name);
      const made = await bytes();
      await mkdir(folder, { recursive: true });
      await writeFile(place, made);
      return tell('written', place);
    } catch {
      return tell('failed', name);
    }
  };
}

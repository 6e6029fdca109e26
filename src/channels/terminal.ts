// The chat in the terminal: one line, one answer. Piped input is read the same way, one entry a line.
import { randomUUID } from 'node:crypto';
import { createInterface } from 'node:readline';
import type { Table } from '../app/ports/table.ts';

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

async function reply({ table, notForMe, trouble }: TerminalParts, text: string): Promise<string> {
  try {
    const answer = await table.take({
      id: randomUUID(),
      speaker: SPEAKER,
      at: new Date().toISOString(),
      text,
      role: 'owner',
    });
    return answer.outcome === 'ignored' ? notForMe : answer.reply;
  } catch (error) {
    return trouble(error);
  }
}

const write = (output: NodeJS.WritableStream, text: string): void => void output.write(`${text}\n`);

// Plays a shift through the whole program, on its own clock.
import type { Json } from '../../core/entry-json.ts';
import type { OpenScratch, Scratch } from '../../app/ports/scratch.ts';
import type { Message } from '../../app/ports/table.ts';
import type { Shift, ShiftTurn } from './shift-file.ts';

export interface Played {
  readonly turns: readonly Json[];
  readonly sent: readonly Json[];
  readonly tests: readonly Json[];
}

/** Plays all turns; the kitchen as it is afterwards stays open for more. */
export async function playInto(scratch: Scratch, shift: Shift): Promise<readonly Json[]> {
  const turns: Json[] = [];
  for (const [index, turn] of shift.turns.entries()) {
    const { entries, outcome, reply } = await scratch.take(messageOf(shift, turn, `turn${index}`));
    const { text, from, at } = turn;
    turns.push({ text, from, at, entries, outcome, reply });
  }
  return turns;
}

export async function play(open: OpenScratch, shift: Shift): Promise<Played> {
  const scratch = await open(shift.settings);
  const turns = await playInto(scratch, shift);
  return { turns, sent: [], tests: await scratch.tests() };
}

/** A turn as a message; who has no role may do and see everything. */
export function messageOf(
  shift: Shift,
  turn: Pick<ShiftTurn, 'from' | 'instant' | 'text'>,
  id: string,
): Message {
  return {
    id,
    speaker: turn.from,
    at: turn.instant,
    text: turn.text,
    role: shift.roles.get(turn.from) ?? 'owner',
  };
}

/** The conversation as a chat would show it. */
export function asChat({ turns }: Played): string {
  const lines = (turns as readonly { at: string; from: string; text: string; reply: string }[]).flatMap(
    ({ at, from, text, reply }) => [
      `${at.replace('T', ' ')}  ${from}: ${text}`,
      ...(reply === '' ? [] : reply.split('\n').map((line) => `    > ${line}`)),
    ],
  );
  return lines.join('\n');
}

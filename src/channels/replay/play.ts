// Plays a shift through the whole program, on its own clock.
import type { Hearers } from '../../core/due.ts';
import type { Json } from '../../core/entry-json.ts';
import { localOf } from '../../core/local-time.ts';
import type { OpenScratch, Scratch } from '../../app/ports/scratch.ts';
import type { Message } from '../../app/ports/table.ts';
import type { Shift, ShiftTurn } from './shift-file.ts';

export interface Played {
  readonly turns: readonly Json[];
  readonly sent: readonly Json[];
  readonly tests: readonly Json[];
}

/** Plays all turns, and tells before each what has fallen due; the kitchen as it is afterwards stays open for more. */
export async function playInto(scratch: Scratch, shift: Shift): Promise<Pick<Played, 'turns' | 'sent'>> {
  const turns: Json[] = [];
  const sent: Json[] = [];
  let clock = shift.turns[0]?.instant ?? '';
  for (const [index, turn] of shift.turns.entries()) {
    sent.push(...(await tellUntil(scratch, shift, { clock, until: turn.instant })));
    clock = turn.instant;
    const { entries, outcome, reply } = await scratch.take(messageOf(shift, turn, `turn${index}`));
    const { text, from, at } = turn;
    turns.push({ text, from, at, entries, outcome, reply });
  }
  return { turns, sent };
}

/** What falls due is told at its own time, one after the other, so that each finds the kitchen as it was then. */
async function tellUntil(
  scratch: Scratch,
  { roles }: Shift,
  { clock, until }: { clock: string; until: string },
): Promise<readonly Json[]> {
  const sent: Json[] = [];
  let now = clock;
  for (;;) {
    const due = scratch.nextDue(now);
    if (due === undefined || due > until) return sent;
    now = due > now ? due : now;
    for (const { to, words, at } of await scratch.tellDue({ at: now })) {
      const zone = scratch.kitchen().settings.timezone;
      for (const member of hearers(to))
        sent.push({
          ...{ at: localOf(Date.parse(at), zone), to: member },
          text: words(roles.get(member) ?? 'owner'),
        });
    }
  }
}

const hearers = (to: Hearers): readonly string[] =>
  to === 'team' ? [to] : [to.speaker, ...(to.withTeam ? ['team'] : [])];

export async function play(open: OpenScratch, shift: Shift): Promise<Played> {
  const scratch = await open(shift.settings);
  const played = await playInto(scratch, shift);
  return { ...played, tests: await scratch.tests() };
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
    people: peopleOf(shift),
  };
}

/** All who have a role or say something. */
const peopleOf = ({ roles, turns }: Shift): ReadonlyMap<string, string> =>
  new Map([...roles.keys(), ...turns.map(({ from }) => from)].map((name) => [name, name]));

interface ChatTurn {
  readonly at: string;
  readonly from: string;
  readonly text: string;
  readonly reply: string;
}
interface ChatSent {
  readonly at: string;
  readonly to: string;
  readonly text: string;
}

const indented = (text: string): readonly string[] => text.split('\n').map((line) => `    > ${line}`);

/** The conversation as a chat would show it. */
export function asChat({ turns, sent }: Played): string {
  const waiting = [...(sent as unknown as readonly ChatSent[])];
  const lines: string[] = [];
  for (const { at, from, text, reply } of turns as unknown as readonly ChatTurn[]) {
    while (waiting[0] !== undefined && waiting[0].at <= at) {
      const told = waiting.shift();
      if (told !== undefined)
        lines.push(`${told.at.replace('T', ' ')}  to ${told.to}:`, ...indented(told.text));
    }
    lines.push(`${at.replace('T', ' ')}  ${from}: ${text}`, ...(reply === '' ? [] : indented(reply)));
  }
  return lines.join('\n');
}

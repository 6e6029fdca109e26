// An answer with where it was asked, and the letters that a part of it comes to.
import type { Meaning } from '../../app/ports/cards.ts';
import type { NewLetter } from '../../app/ports/mailbox.ts';
import type { Answer } from '../../app/ports/table.ts';
import type { Membership } from '../../app/ports/team.ts';
import type { Role } from '../../core/role.ts';
import type { Desk } from './desk.ts';
import type { Personal } from './incoming.ts';

export interface Answered {
  readonly desk: Desk;
  readonly update: number;
  readonly incoming: Personal & { is: 'text' | 'edited' | 'press' | 'voice' };
  readonly member: Membership;
  readonly answer: Answer;
  /** Of the button that was pressed. */
  readonly scope?: string;
}

/** In a group whoever is there reads it: nothing is told there that not everybody may see. */
export const readersOf = ({ isGroup }: Personal, { role }: Membership): Role => (isGroup ? 'cutter' : role);

export interface Posted {
  readonly letters: readonly NewLetter[];
  readonly meanings: readonly Meaning[];
  readonly void: readonly { readonly chat: number; readonly scope: string }[];
}

export const NOTHING: Posted = { letters: [], meanings: [], void: [] };

/** The card says all of it: what was recorded needs no message beside. */
export function isQuiet({ answer: { outcome, touched, entries } }: Answered): boolean {
  const isOver = touched.length === 0 || touched.some(({ status }) => status === 'closed');
  return outcome === 'recorded' && !isOver && entries.every((entry) => !isQuestion(entry));
}

function isQuestion(entry: unknown): boolean {
  const kind = typeof entry === 'object' && entry !== null && 'kind' in entry ? String(entry.kind) : '';
  return kind.startsWith('ask') || kind === 'status' || kind === 'help';
}

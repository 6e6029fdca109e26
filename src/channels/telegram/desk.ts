// What the handling of updates works with, and how an update ends without facts.
import type { Cards } from '../../app/ports/cards.ts';
import type { Delivery, Mailbox, NewLetter } from '../../app/ports/mailbox.ts';
import type { HearNote } from '../../app/ports/hearing.ts';
import type { KeepRecording } from '../../app/ports/recordings.ts';
import type { Log } from '../../app/ports/log.ts';
import type { KitchenId } from '../../app/ports/store.ts';
import type { Table } from '../../app/ports/table.ts';
import type { Team } from '../../app/ports/team.ts';
import type { Role } from '../../core/role.ts';
import type { Reply } from '../../core/reply.ts';
import type { Budget } from './budget.ts';
import type { Pace } from './pace.ts';
import { split } from './split.ts';

export type TeamWish =
  { readonly is: 'invite'; readonly role: Role } | { readonly is: 'remove'; readonly name: string };

export interface Desk {
  /** The number of the bot, as the service knows it. */
  readonly bot: string;
  readonly tables: ReadonlyMap<KitchenId, Table>;
  readonly ears: ReadonlyMap<KitchenId, HearNote>;
  /** The bytes of a file of the service; undefined where it gives them no more. */
  readonly download: (file: string) => Promise<Uint8Array | undefined>;
  /** Shows in a chat that a note is being heard; fades by itself. Fails silently. */
  readonly showHearing: (chat: number) => Promise<void>;
  /** Keeps a note for as long as its kitchen wants; where it is absent none is kept. */
  readonly keep?: KeepRecording;
  readonly pace: Pace;
  readonly post: Mailbox & Team & Cards;
  readonly words: (reply: Reply) => string;
  readonly readTeamWish: (line: string) => TeamWish | undefined;
  /** Under which links lead to it. */
  readonly username: () => string;
  readonly members: Budget;
  /** Of members too, by our own clock: a press tells no time, and must not put forward that of messages which waited. */
  readonly presses: Budget;
  readonly strangers: Budget;
  readonly log: Log;
}

export const now = (): string => new Date().toISOString();

/** Of several pieces the first answers the message, the last has the buttons. */
export function letters(
  chat: number,
  text: string,
  { about, buttons }: Pick<NewLetter, 'about' | 'buttons'> = {},
): readonly NewLetter[] {
  const pieces = split(text);
  return pieces.map((piece, at) => ({
    ...{ chat, kind: 'message', text: piece },
    ...(about === undefined || at > 0 ? {} : { about }),
    ...(buttons === undefined || at < pieces.length - 1 ? {} : { buttons }),
  }));
}

type More = Omit<Partial<Delivery>, 'bot' | 'update' | 'letters'>;

export const done = (
  { bot }: Pick<Desk, 'bot'>,
  update: number,
  posted: readonly NewLetter[],
  more: More = {},
): Delivery => ({ bot, update, end: 'done', at: now(), letters: posted, ...more });

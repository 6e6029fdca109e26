// The port to what a chat service brought and what is to be sent there. What comes in is stored before the service is told
// that it arrived; what goes out is stored with what it tells of. Defined by tests/app/ports/mailbox.contract.ts.
import type { TeamChange } from './team.ts';

export interface Update {
  /** Exact and unique for its bot; the numbers may jump and start anew. */
  readonly id: number;
  /** As it came, JSON. */
  readonly body: string;
}

export interface StoredUpdate extends Update {
  /** How often its handling failed. */
  readonly failures: number;
}

export interface NewLetter {
  readonly chat: number;
  /** `leave`: not a message, the bot leaves the chat. Harmless to repeat. */
  readonly kind: 'message' | 'leave';
  readonly text: string;
  /** To somebody who is not of the team: nothing of it is kept, whatever becomes of it. */
  readonly fleeting?: true;
}

export interface Letter extends NewLetter {
  readonly seq: number;
}

/** How one update ends: all of it in one transaction, with the facts where there are any. */
export interface Delivery {
  readonly bot: string;
  readonly update: number;
  readonly end: 'done' | 'parked';
  readonly at: string;
  readonly letters: readonly NewLetter[];
  readonly change?: TeamChange;
  /** Counted, and nothing else is kept. */
  readonly fromStranger?: true;
}

/** What became of a letter. `again`: surely not sent. `unknown`: it may have arrived, so it is never sent again. */
export type LetterEnd = 'sent' | 'again' | 'unknown' | 'failed';

export interface Backlog {
  readonly oldestUpdateAt?: string;
  readonly oldestLetterAt?: string;
  readonly strangers: number;
}

export interface Mailbox {
  /** Stores what is new of these. Once it resolves, the service may be told that they arrived. */
  receive(bot: string, updates: readonly Update[], at: string): Promise<void>;
  /** Not handled yet, in the order of arrival. */
  unhandled(bot: string, limit: number): Promise<readonly StoredUpdate[]>;
  /** Counts one more failure. */
  noteFailure(bot: string, update: number): Promise<void>;
  settle(delivery: Delivery): Promise<void>;
  /** At the start: what was on its way when the process ended may have arrived. Returns how many. */
  noteInterrupted(bot: string): Promise<number>;
  chatsWithLetters(bot: string): Promise<readonly number[]>;
  /** The oldest letter of a chat, now on its way; the notice goes before it where an earlier one may not have arrived. */
  takeLetter(bot: string, chat: number, notice: string): Promise<Letter | undefined>;
  /** `tell` is put in the outbox with the first letter of a chat that failed, never again. */
  endLetter(seq: number, end: LetterEnd, tell?: readonly NewLetter[]): Promise<void>;
  backlog(bot: string): Promise<Backlog>;
}

// The port to what a chat service brought and what is to be sent there. What comes in is stored before the service is told
// that it arrived; what goes out is stored with what it tells of. Defined by tests/app/ports/mailbox.contract.ts.
import type { ButtonChange, ButtonRow, CardKey } from './cards.ts';
import type { TeamChange } from './team.ts';

export interface Update {
  /** Exact and unique for its bot; the numbers may jump and start anew. */
  readonly id: number;
  /** Where it was said, or 0: each chat has its turn. */
  readonly chat: number;
  /** As it came, JSON. */
  readonly body: string;
}

export interface StoredUpdate extends Update {
  /** How often its handling failed. */
  readonly failures: number;
}

/**
 * `card`: the message of a test, sent once and then edited. `reaction`, `toast` (the answer to a press) and `bare` (takes the
 * buttons off a message): harmless to repeat, as is `leave` (the bot leaves the chat).
 */
export type LetterKind = 'message' | 'file' | 'card' | 'reaction' | 'toast' | 'bare' | 'leave';

export interface NewLetter {
  readonly chat: number;
  readonly kind: LetterKind;
  /** The words; of a reaction the sign. */
  readonly text: string;
  /** The message of the chat that it answers, reacts to or takes the buttons from. */
  readonly about?: number;
  readonly buttons?: readonly ButtonRow[];
  /** A file, with the text as its caption. */
  readonly file?: { readonly name: string; readonly type: string; readonly bytes: Uint8Array };
  /** Of a card. One that waits is written anew, not doubled. */
  readonly card?: CardKey & { readonly isOpen: boolean };
  /** The press that a toast answers. */
  readonly press?: string;
  /** It rings, and may come twice: then it says so. */
  readonly alarm?: true;
  /** To somebody who is not of the team: nothing of it is kept, whatever becomes of it. */
  readonly fleeting?: true;
}

export interface Letter extends NewLetter {
  readonly seq: number;
  /** The message that stands in the chat for a card. */
  readonly stands?: number;
}

/** How one update ends: all of it in one transaction, with the facts where there are any. */
export interface Delivery {
  readonly bot: string;
  readonly update: number;
  readonly end: 'done' | 'parked';
  readonly at: string;
  readonly letters: readonly NewLetter[];
  readonly change?: TeamChange;
  readonly buttons?: ButtonChange;
  /** The letters of a chat that may not have arrived are sent once more: somebody asked for them. */
  readonly again?: number;
  /** Counted, and nothing else is kept. */
  readonly fromStranger?: true;
}

/**
 * What became of a letter. `again`: surely not sent. `unknown`: it may have arrived, so it is sent again only where that is
 * harmless or somebody asks. `gone`: the message that was to be edited is no more; the card is sent anew.
 */
export type LetterEnd = 'sent' | 'again' | 'unknown' | 'gone' | 'failed';

export interface Ending {
  /** Put in the outbox with the first letter of a chat that failed, never again. */
  readonly tell?: readonly NewLetter[];
  /** The number of the message that was sent. */
  readonly message?: number;
  /** Takes the next letter of the chat in the same transaction. */
  readonly next?: Notices;
}

/** What goes with the next letter of a chat where an earlier one may not have arrived, and with one that may come twice. */
export interface Notices {
  readonly unknown: string;
  /** The label of the button that has it sent again. */
  readonly again: string;
  readonly repeat: string;
}

export interface Backlog {
  readonly oldestUpdateAt?: string;
  readonly oldestLetterAt?: string;
  readonly strangers: number;
}

export interface Mailbox {
  /** Stores what is new of these. Once it resolves, the service may be told that they arrived. */
  receive(bot: string, updates: readonly Update[], at: string): Promise<void>;
  /** Not handled yet: of each chat the oldest ones, in the order of arrival. */
  unhandled(bot: string, limit: number): Promise<readonly StoredUpdate[]>;
  /** Counts one more failure. */
  noteFailure(bot: string, update: number): Promise<void>;
  settle(delivery: Delivery): Promise<void>;
  /** At the start: what was on its way when the process ended may have arrived. Returns how many. */
  noteInterrupted(bot: string): Promise<number>;
  chatsWithLetters(bot: string): Promise<readonly number[]>;
  /** The oldest letter of a chat, now on its way. */
  takeLetter(bot: string, chat: number, notices: Notices): Promise<Letter | undefined>;
  /** With `next`, the letter that is on its way now: the oldest of the same chat. */
  endLetter(seq: number, end: LetterEnd, ending?: Ending): Promise<Letter | undefined>;
  backlog(bot: string): Promise<Backlog>;
}

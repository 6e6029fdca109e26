// The port to what stands in the chats: the running card of each test, and the buttons that still mean something.
import type { Entry } from '../../core/entry.ts';
import type { TestId } from '../../core/facts.ts';
import type { KitchenId } from './store.ts';

/** A test and its kitchen; a chat has at most one card of it. */
export interface CardKey {
  readonly kitchen: KitchenId;
  readonly test: TestId;
}

export interface Button {
  readonly label: string;
  /** What the service brings back when it is pressed: random, and good for one press. */
  readonly nonce: string;
}
export type ButtonRow = readonly Button[];

export type Action =
  | { readonly is: 'entry'; readonly entry: Entry }
  /** Send what may not have arrived. */
  | { readonly is: 'again' };

export interface Meaning {
  readonly nonce: string;
  readonly chat: number;
  /** Buttons of one scope go together: with one press, with a new card, with a new question. */
  readonly scope: string;
  readonly kitchen: KitchenId;
  /** Who may press it; anybody of the kitchen where it is absent. */
  readonly person?: number;
  readonly action: Action;
}

export interface ButtonChange {
  /** Scopes of a chat whose buttons mean nothing any more. */
  readonly void: readonly { readonly chat: number; readonly scope: string }[];
  readonly add: readonly Meaning[];
}

export interface Cards {
  /** The chats that have a card of the test. */
  chatsWithCard(bot: string, card: CardKey): Promise<readonly number[]>;
  /** The test whose card a message of a chat is. */
  cardAt(bot: string, chat: number, message: number): Promise<CardKey | undefined>;
  meaning(bot: string, nonce: string): Promise<Meaning | undefined>;
}

// A question of the bot that stands: what it asks for, and what each answer would record.
import type { Entry } from './entry.ts';

/** Why it is asked, with what the wording needs. Codes are the message names of replies.ftl after `ask-`. */
export interface Asking {
  readonly code: string;
  readonly args: Readonly<Record<string, unknown>>;
}

/** An answer in words ("add", "replace", "yes") and the entry that it makes; null where it makes none. */
export type Choices = Readonly<Record<string, Entry | null>>;

export interface Question {
  readonly askedAt: string;
  readonly asking: Asking;
  /** What is recorded on "yes", "add" … */
  readonly choices: Choices;
  /** The entry that lacks one slot, and the slot that a bare amount or name fills. */
  readonly wants?: { readonly held: Entry; readonly slot: string };
  /** The entry as it was said: saying the same again accepts it. */
  readonly said?: Entry;
  /** Whether the entry asked about is recorded already (too heavy in all), so that "no" has nothing to drop. */
  readonly recorded: boolean;
  /** Times it was repeated after an answer that did not decide it. */
  readonly repeats: number;
}

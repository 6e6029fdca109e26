// A question of the bot that stands: what it asks for, and what each answer would record.
import type { Entry } from './entry.ts';
import type { TestId } from './facts.ts';
import type { Reply } from './reply.ts';

export interface Question {
  readonly askedAt: string;
  /** The question itself, as it was said; its message name is the code of the question. */
  readonly asked: Reply;
  /** What each answer in words ("yes", "add", "replace") makes of it. */
  readonly choices: Readonly<Record<string, Entry>>;
  /** The entry that lacks one slot, and the slot that a bare amount or name fills. */
  readonly wants?: Wanted;
  /** The entry as it was said, and what saying the same again makes of it. */
  readonly again?: { readonly said: Entry; readonly accepts: Entry };
  /** The test that is too heavy in all, where that is what is asked about. */
  readonly overweight?: TestId;
  /** Whether the entry asked about is recorded already, so that "no" has nothing to drop. */
  readonly recorded: boolean;
  /** Times it was repeated after an answer that did not decide it. */
  readonly repeats: number;
}

export interface Wanted {
  /** An entry without the slot. */
  readonly held: Readonly<Record<string, unknown>> & { readonly kind: string };
  readonly slot: string;
}

// What was heard, and not well enough to record: the entry is put as a question. A yes or a press takes it as it is, and so
// does the same said again; it is then decided like any other entry, so that what is implausible is still asked.
import type { Entry } from '../core/entry.ts';
import { name, say } from '../core/reply.ts';
import { leavesQuestion } from './index.ts';
import { type Asked, asks } from './intent.ts';

/** Undefined where nothing would be recorded, taken back or closed by it: it may be answered as heard. */
export function doubt(entry: Entry, words: string): Asked | undefined {
  if (leavesQuestion(entry.kind)) return undefined;
  const asked = asks(say('ask-heard', { words: name(words) }), {
    choices: { yes: entry },
    again: { said: entry, accepts: entry },
  });
  return asked.is === 'asked' ? asked.ask : undefined;
}

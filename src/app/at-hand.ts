// Reads from the store what a message may be about and what has left the memory.
import type { Kind } from '../core/entry.ts';
import type { Kitchen } from '../core/kitchen.ts';
import { ABOUT_CLOSED, withTestsAskedAbout } from './closed-tests.ts';
import type { Hearing, State } from './heed.ts';
import { LOOKS_FOR_TRIM, looksAtLots, withLots, withTrimTests } from './lots-at-hand.ts';
import type { Message } from './ports/table.ts';
import { withRecentTests, withSpeaker } from './restore.ts';
import type { Understood } from './understand.ts';

/** What may be about a test that was closed before. */
const LOOKING_BACK: readonly Kind[] = ['undo', 'correct', ...ABOUT_CLOSED];

interface Said {
  readonly message: Message;
  readonly understood: readonly Understood[];
}

/** Reads what the speaker did before, at their first message, and what this one may touch. */
export async function atHand(parts: Hearing, state: State, said: Said): Promise<Kitchen> {
  const { store, id } = parts;
  const { speaker, at } = said.message;
  state.kitchen = await remembered(parts, state.kitchen, said);
  const kinds = said.understood.flatMap((one) => ('entry' in one ? [one.entry.kind] : []));
  if (kinds.some(looksAtLots))
    state.kitchen = await withLots(store, id, {
      kitchen: state.kitchen,
      speaker,
      isLog: kinds.includes('askGrindLog'),
    });
  if (kinds.some((kind) => LOOKS_FOR_TRIM.has(kind)))
    state.kitchen = await withTrimTests(store, id, { kitchen: state.kitchen, at });
  state.kitchen = await withTestsAskedAbout({ store, id }, state.kitchen, said.understood);
  return state.kitchen;
}

async function remembered(
  { store, id }: Hearing,
  kitchen: Kitchen,
  { message: { speaker, replaces }, understood }: Said,
): Promise<Kitchen> {
  if (understood.length === 0 && replaces === undefined) return kitchen;
  if (!kitchen.speakers.has(speaker)) return withSpeaker(store, id, { kitchen, speaker });
  const looksBack = understood.some((one) => 'entry' in one && LOOKING_BACK.includes(one.entry.kind));
  if (!looksBack && replaces === undefined) return kitchen;
  return withRecentTests(store, id, { kitchen, speaker });
}

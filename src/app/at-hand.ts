// Reads from the store what a message may be about and what has left the memory.
import type { Kitchen } from '../core/kitchen.ts';
import type { Hearing, State } from './heed.ts';
import { looksAtLots, withLots, withTrimTests } from './lots-at-hand.ts';
import type { Message } from './ports/table.ts';
import { withRecentTests, withSpeaker } from './restore.ts';
import type { Understood } from './understand.ts';

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
  if (kinds.some(looksAtLots)) state.kitchen = await withLots(store, id, { kitchen: state.kitchen, speaker });
  if (kinds.includes('grind')) state.kitchen = await withTrimTests(store, id, { kitchen: state.kitchen, at });
  return state.kitchen;
}

async function remembered(
  { store, id }: Hearing,
  kitchen: Kitchen,
  { message: { speaker, replaces }, understood }: Said,
): Promise<Kitchen> {
  if (understood.length === 0 && replaces === undefined) return kitchen;
  if (!kitchen.speakers.has(speaker)) return withSpeaker(store, id, { kitchen, speaker });
  const looksBack = understood.some(
    (one) => 'entry' in one && (one.entry.kind === 'undo' || one.entry.kind === 'correct'),
  );
  if (!looksBack && replaces === undefined) return kitchen;
  return withRecentTests(store, id, { kitchen, speaker });
}

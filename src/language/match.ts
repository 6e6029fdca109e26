// Which sentences begin at a place, and what their slots read.
import { COST } from './reading.ts';
import type { SlotReading } from './slot.ts';
import type { State } from './template.ts';
import type { Token } from './token.ts';

/**
 * When a sentence is read: only where a question mark ends it, only where none does, only while a question stands, only behind
 * an alarm that asks for a temperature, only as the whole line, only where no article stands before it ("the note on the board"), only where a sentence of the line ends with it,
 * only between commas or stops.
 */
export type When =
  'question' | 'statement' | 'answer' | 'reading' | 'alone' | 'undetermined' | 'ends' | 'apart';

/** What a sentence says beside its slots. */
export interface Meaning {
  readonly intent: string;
  /** Slots with a fixed value. */
  readonly set: Readonly<Record<string, string | boolean | number>>;
  readonly when: readonly When[];
  /** Set where the sentence must be asked about: the question's code, and the intent that each answer makes of it. */
  readonly ask?: string;
  readonly readings?: Readonly<Record<string, string>>;
}

export interface Match {
  readonly meaning: Meaning;
  readonly slots: Readonly<Record<string, SlotReading>>;
  readonly from: number;
  readonly end: number;
  readonly cost: number;
}

/** Reads a slot of a type at a place; the same place is read once. */
export type ReadSlot = (type: string, at: number) => readonly SlotReading[];

interface Search {
  readonly tokens: readonly Token[];
  readonly read: ReadSlot;
  readonly from: number;
  readonly found: Match[];
}

/** The slots read so far, the newest first. */
interface Filled {
  readonly name: string;
  readonly reading: SlotReading;
  readonly before: Filled | undefined;
}

interface Progress {
  readonly at: number;
  readonly filled: Filled | undefined;
  readonly cost: number;
}

/** All sentences that begin at a place; they end where a sentence of the line ends, or before. */
export function matchAt(
  start: State<Meaning>,
  tokens: readonly Token[],
  from: number,
  read: ReadSlot,
): readonly Match[] {
  const search: Search = { tokens, read, from, found: [] };
  advance(search, start, { at: from, filled: undefined, cost: 0 });
  return search.found;
}

function advance(search: Search, state: State<Meaning>, { at, filled, cost }: Progress): void {
  const { tokens, from, found } = search;
  if (at > from)
    for (const meaning of state.ends) found.push({ meaning, slots: asSlots(filled), from, end: at, cost });
  const token = tokens[at];
  if (token === undefined || (at > from && token.before === 'stop')) return;
  const comma = at > from && token.before === 'comma' ? COST.comma : 0;
  const next = token.kind === 'figure' ? undefined : state.words.get(token.text);
  if (next !== undefined) advance(search, next, { at: at + 1, filled, cost: cost + comma });
  for (const { type, leads } of state.slots) {
    for (const reading of search.read(type, at))
      for (const { name, next: after } of leads)
        advance(search, after, {
          at: reading.end,
          filled: { name, reading, before: filled },
          cost: cost + reading.cost + comma,
        });
  }
}

/** By name; a slot that was read twice keeps the later reading. */
function asSlots(filled: Filled | undefined): Readonly<Record<string, SlotReading>> {
  if (filled === undefined) return {};
  return { ...asSlots(filled.before), [filled.name]: filled.reading };
}

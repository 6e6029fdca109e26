// The sentences of one kind that the ear listens for, as a tree of words and slots: those of the language's automaton that
// hold no other word or slot than the kind's.
import type { Meaning } from '../match.ts';
import type { State } from '../template.ts';
import type { EarKind } from './ear.ts';

/** What may follow: words and slots with what follows them, and whether a sentence may end here. */
export interface Branches {
  readonly ends: boolean;
  readonly steps: readonly { readonly step: string; readonly isSlot: boolean; readonly next: Branches }[];
}

export interface Wanted {
  readonly intent: string;
  readonly kind: EarKind;
  /** The form in which a type of slot is spoken; types of one form are one branch. */
  readonly formOf: (type: string) => string | undefined;
  /** Whether a question stands, so that its answers may be said. */
  readonly answering: boolean;
}

/** Undefined where no sentence of the kind begins here. */
export function branches(
  states: readonly State<Meaning>[],
  wanted: Wanted,
  said = { last: '', words: 0 },
): Branches | undefined {
  const next = new Map<string, { isSlot: boolean; states: State<Meaning>[] }>();
  const { begins, apart, most = Infinity } = wanted.kind;
  const lead = (step: string, isSlot: boolean, state: State<Meaning>): void => {
    if (said.last === '' ? !begins.includes(step) : apart.includes(`${said.last} ${step}`)) return;
    if (!isSlot && said.words >= most) return;
    const known = next.get(step) ?? { isSlot, states: [] };
    if (!known.states.includes(state)) known.states.push(state);
    next.set(step, known);
  };
  for (const state of states) {
    for (const word of wanted.kind.words) {
      const to = state.words.get(word);
      if (to !== undefined) lead(word, false, to);
    }
    for (const { type, leads } of state.slots) {
      const form = wanted.kind.slots.includes(type) ? wanted.formOf(type) : undefined;
      if (form !== undefined) for (const { next: to } of leads) lead(form, true, to);
    }
  }
  const steps = [...next].flatMap(([step, { isSlot, states: to }]) => {
    const after = branches(to, wanted, { last: step, words: said.words + (isSlot ? 0 : 1) });
    return after === undefined ? [] : [{ step, isSlot, next: after }];
  });
  const ends = states.some((state) => state.ends.some((meaning) => isWanted(meaning, wanted)));
  return ends || steps.length > 0 ? { ends, steps } : undefined;
}

/** Neither a sentence that must be asked about, nor one that needs a mark of writing. */
const isWanted = ({ intent, ask, when }: Meaning, { intent: wanted, answering }: Wanted): boolean =>
  intent === wanted &&
  ask === undefined &&
  !when.includes('question') &&
  !when.includes('reading') &&
  (answering || !when.includes('answer'));

// The looks at one sound: what two models hear in it, how well that fits, how well the nearest other sentences fit, and how
// well any sounds at all. What can't be recorded any more is not looked at further.
import { type Automaton, automaton } from './automaton.ts';

/** What one look heard, and how well it fits; nothing fits better than 0. */
export interface Pass {
  readonly words: string;
  readonly score: number;
}

/** The wide model hears all of the sound, the narrow one no more than a telephone passes on. The judge is a wide one. */
export type Listener = 'wide' | 'narrow' | 'judge';

export type Ask = (by: Listener, words: Automaton) => Promise<Pass>;

export interface Looked {
  readonly words: string;
  /** Whether what both models hear comes to the same. */
  readonly agree: boolean;
  /** The better of what they hear, where they agree. */
  readonly own: number;
  /** Any sounds of speech in any order. */
  readonly sounds: number;
  /** The best of the near sentences; undefined where none is near, or where the models do not agree. -Infinity: none fits at all. */
  readonly near: number | undefined;
}

interface Heard {
  readonly whole: Automaton;
  readonly near: (words: string) => readonly string[];
  readonly isSame: (words: string, others: string) => boolean;
}

/** Undefined where one of the models hears nothing that is listened for: with noise it is mostly the narrow one. */
export async function look(ask: Ask, { whole, near, isSame }: Heard): Promise<Looked | undefined> {
  const { words } = await ask('wide', whole);
  if (words === '') return undefined;
  const { words: narrow } = await ask('narrow', whole);
  if (narrow === '') return undefined;
  const agree = isSame(words, narrow);
  const { score: own } = await ask('judge', only(agree ? [...new Set([words, narrow])] : [words]));
  const { score: sounds } = await ask('judge', ANY_SOUNDS);
  const others = agree ? near(words) : [];
  const rival = others.length === 0 ? undefined : await ask('judge', only(others));
  return { words, agree, own, sounds, near: rival?.score };
}

const only = (sentences: readonly string[]): Automaton =>
  automaton(`public <said> = ${sentences.join(' | ')};`);

// The words by which the thread knows each sound of English.
const PHONES =
  'aa ae ah ao aw ay b ch d dh eh er ey f g hh ih iy jh k l m n ng ow oy p r s sh t th uh uw v w y z zh'.split(
    ' ',
  );
const ANY_SOUNDS: Automaton = {
  states: 2,
  start: 1,
  end: 0,
  arcs: [
    ...PHONES.map((phone) => ({ from: 1, to: 1, word: `sound-${phone}`, logp: -Math.log(PHONES.length) })),
    { from: 1, to: 0, word: undefined, logp: 0 },
  ],
};

// What several looks at the same sound come to: words, and how sure we are of them. The recogniser's own confidence is of
// no use, so it is asked in other ways: does it hear the same in the sound a little quicker and a little slower? How much
// better do the words fit than the nearest others (another number, another name)? How much worse than any sounds at all?
import type { Transcript } from '../../app/ports/speech.ts';

/** What one pass heard, and how well it fits; nothing fits better than 0. */
export interface Pass {
  readonly words: string;
  readonly score: number;
}

export interface Rivals {
  readonly own: number;
  /** The best of the near sentences. */
  readonly near: Pass;
  /** Any sounds of speech in any order. */
  readonly sounds: number;
}

// Fitted by logistic regression on synthetic clips (docs/voice.md), where wrong hearings, talk and noise count as one.
const FIT = { agree: 1.751, margin: 0.94, fit: 2.011, base: -2.233 } as const;
/** The units of the two features, and how far from 0 they count. */
const MARGIN = { unit: 200, least: -1, most: 2.5 } as const;
const FIT_A_FRAME = { unit: 10, least: -2, most: 1 } as const;

/** A rival that fits nearly as well: one number may well be the other. */
const NARROW = 130;
/** Below the point of recording: such an entry waits for a word, however sure the rest is. */
const AT_MOST_WHEN_NARROW = 0.8;

/** Frames are hundredths of a second. */
export function agreed([first, ...more]: readonly Pass[], rivals: Rivals, frames: number): Transcript {
  if (first === undefined || first.words === '') return NOTHING;
  const agreeing = more.filter(({ words }) => words === first.words).length;
  const margin = rivals.near.words === '' ? undefined : rivals.own - rivals.near.score;
  const sum =
    FIT.base +
    FIT.agree * agreeing +
    FIT.margin * counted(margin ?? 0, MARGIN) +
    FIT.fit * counted((rivals.own - rivals.sounds) / frames, FIT_A_FRAME);
  const sureness = 1 / (1 + Math.exp(-sum));
  const isNarrow = margin !== undefined && margin < NARROW;
  const heardElse = more.map(({ words }) => words).filter((words) => words !== '' && words !== first.words);
  return {
    words: first.words,
    confidence: isNarrow ? Math.min(sureness, AT_MOST_WHEN_NARROW) : sureness,
    others: [...new Set([...(isNarrow ? [rivals.near.words] : []), ...heardElse])],
  };
}

interface Feature {
  readonly unit: number;
  readonly least: number;
  readonly most: number;
}

const counted = (value: number, { unit, least, most }: Feature): number =>
  Math.max(least, Math.min(most, value / unit));

export const NOTHING: Transcript = { words: '', confidence: 0, others: [] };

// What the looks at one sound come to: words, and how sure we are of them. The recogniser's own confidence is of no use, so
// it is asked in other ways: do two models hear the same? How much better do the words fit than the nearest others
// (another number, another name)? How much worse than any sounds at all?
import type { Transcript } from '../../app/ports/speech.ts';
import type { Looked } from './look.ts';

// Fitted by logistic regression on synthetic clips (docs/voice.md), where wrong hearings, talk and noise count as one.
const FIT = { agree: 1.751, margin: 0.94, fit: 2.011, base: -2.233 } as const;
/** The units of the two features, and how far from 0 they count. */
const MARGIN = { unit: 200, least: -1, most: 2.5 } as const;
const FIT_A_FRAME = { unit: 10, least: -2, most: 1 } as const;

/** Frames are hundredths of a second. */
export function transcriptOf(looked: Looked | undefined, frames: number): Transcript {
  if (looked === undefined) return { words: '', confidence: 0 };
  const { words, agree, own, near, sounds } = looked;
  const sum =
    FIT.base +
    (agree ? FIT.agree : 0) +
    FIT.margin * counted(near === undefined ? 0 : own - near, MARGIN) +
    FIT.fit * counted((own - sounds) / frames, FIT_A_FRAME);
  return { words, confidence: 1 / (1 + Math.exp(-sum)) };
}

interface Feature {
  readonly unit: number;
  readonly least: number;
  readonly most: number;
}

const counted = (value: number, { unit, least, most }: Feature): number =>
  Math.max(least, Math.min(most, value / unit));

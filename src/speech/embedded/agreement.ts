// What two passes over the same sound come to: words, and how sure we are of them.
import type { Transcript } from '../../app/ports/speech.ts';

/** What one pass heard, and how well each hundredth of a second fits it; nothing fits better than 0. */
export interface Pass {
  readonly words: string;
  readonly score: number;
}

// Fitted on development clips (docs/voice.md): the score at which half of what was heard so is right, and how fast that changes.
const FIT = {
  agreed: { middle: -48, width: 5 },
  alone: { middle: -26, width: 6 },
} as const;

export function agreed([first, second]: readonly Pass[]): Transcript {
  if (first === undefined || first.words === '') return { words: '', confidence: 0, others: [] };
  const isSame = first.words === second?.words;
  const fit = isSame ? FIT.agreed : FIT.alone;
  const score = isSame ? (first.score + second.score) / 2 : first.score;
  const confidence = 1 / (1 + Math.exp((fit.middle - score) / fit.width));
  return {
    words: first.words,
    confidence,
    others: isSame || second === undefined || second.words === '' ? [] : [second.words],
  };
}

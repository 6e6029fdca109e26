// The end of a piece against the size that is cut: how many portions it gives, and what is over.
import { portionsFrom } from './order.ts';
import type { Grams } from './quantity.ts';

export interface EndPiece {
  readonly count: number;
  readonly overGrams: Grams;
}

/** Whole portions of the size (above 0), and the rest. Common practice: a heavier end gives one portion, and the rest goes to trim. */
export function endPiece(grams: Grams, eachGrams: Grams): EndPiece {
  const count = portionsFrom(grams, eachGrams);
  return { count, overGrams: grams.minus(eachGrams.times(count)) };
}

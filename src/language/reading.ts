// What a stretch of tokens can mean, and how far it reaches.
import type { Token } from './token.ts';

/** A reading of the tokens from some place up to `end`. Of several the cheaper is the likelier. */
export interface Reading<Value> {
  readonly value: Value;
  readonly end: number;
  readonly cost: number;
  /** Set where a careful listener would ask about it: the reading covers the words, its value is not to be used. */
  readonly doubt?: string;
}

/** What makes a reading less likely. A word that nothing reads costs more than all of these together. */
export const COST = {
  unread: 1000,
  doubt: 60,
  freeWord: 12,
  misspelt: 8,
  soundsLike: 9,
  homophone: 5,
  /** A comma within a sentence. */
  comma: 6,
  /** A sentence that must be asked about. */
  asked: 5.5,
  entry: 1,
} as const;

/** The token at a place, where it goes on from the one before without a comma or a stop. */
export function follows(tokens: readonly Token[], at: number): Token | undefined {
  const token = tokens[at];
  return token?.before === 'space' ? token : undefined;
}

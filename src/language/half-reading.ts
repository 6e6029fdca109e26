// A line that no sentence reads and that holds a temperature of what is cooked all the same: "burger 166 for table 4". Where
// ground meat is about, it is asked about; a line with a word of talk is not.
import type { Listener } from './listen.ts';
import type { Token } from './token.ts';

/** More words than this are a sentence among people. */
const LONGEST = 9;

/** It names food that is cooked all through, and holds a number that is as hot as nothing else. */
export function isHalfReading({ language, readers }: Listener, tokens: readonly Token[]): boolean {
  if (tokens.length > LONGEST || tokens.some(({ text }) => language.chatter.has(text))) return false;
  const reads = (slot: string): boolean =>
    tokens.some((_, at) => (readers[slot]?.(tokens, at) ?? []).length > 0);
  return reads('throughFood') && reads('hotDegrees');
}

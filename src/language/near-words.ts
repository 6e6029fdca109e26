// Words that are nearly a known one: slips of the finger, and words of the same sound.
import { doubleMetaphone } from 'double-metaphone';
import { COST } from './reading.ts';

export interface NearWord {
  readonly word: string;
  readonly cost: number;
}

/** Words that misspelling correction must leave alone. */
export type Untouched = (word: string) => boolean;

/** Known words as near ones are looked up. */
export interface NearIndex {
  readonly words: ReadonlySet<string>;
  /** By their first letter, and by their sound. */
  readonly byLetter: ReadonlyMap<string, readonly string[]>;
  readonly bySound: ReadonlyMap<string, readonly string[]>;
  /** Near words that were looked for before. */
  readonly near: Map<string, readonly NearWord[]>;
}

export const nearIndex = (words: ReadonlySet<string>): NearIndex => ({
  words,
  byLetter: grouped(words, (word) => [word.charAt(0)]),
  bySound: grouped(words, sounds),
  near: new Map(),
});

export function grouped(
  words: Iterable<string>,
  keys: (word: string) => readonly string[],
): Map<string, string[]> {
  const groups = new Map<string, string[]>();
  for (const word of words) for (const key of keys(word)) groups.set(key, [...(groups.get(key) ?? []), word]);
  return groups;
}

/** The sound codes of a word that is long enough to have one worth comparing. */
const sounds = (word: string): readonly string[] => {
  if (word.length < 4) return [];
  const [first, second] = doubleMetaphone(word);
  return [...new Set([first, second])].filter((code) => code.length >= 3);
};

const REMEMBERED = 4000;

/** The near words of a word, found once: the same slips come again and again. */
export function nearWords(index: NearIndex, word: string, untouched: Untouched): readonly NearWord[] {
  const known = index.near.get(word);
  if (known !== undefined) return known;
  if (index.near.size >= REMEMBERED) index.near.clear();
  const found = findNear(index, word, untouched);
  index.near.set(word, found);
  return found;
}

/** Words of names within one slip of this one (two from seven letters on), or of the same sound and first letter. */
function findNear(index: NearIndex, word: string, untouched: Untouched): readonly NearWord[] {
  const itself: readonly NearWord[] = index.words.has(word) ? [{ word, cost: 0 }] : [];
  if (word.length < 3 || untouched(word)) return itself;
  return [...itself, ...nearlyWords(index, word)];
}

function nearlyWords(index: NearIndex, word: string): readonly NearWord[] {
  const letter = index.byLetter.get(word.charAt(0)) ?? [];
  const spelt = letter.flatMap((known) => {
    if (known === word || (word.length < 4 && known.length !== word.length + 1)) return [];
    const slips =
      known.length < 4
        ? undoubled(word) === known
          ? 1
          : 9
        : slipsBetween(word, known, known.length >= 7 ? 2 : 1);
    return slips <= (known.length >= 7 ? 2 : 1) ? [{ word: known, cost: COST.misspelt + slips }] : [];
  });
  if (spelt.length > 0) return spelt;
  const heard = sounds(word).flatMap((code) => index.bySound.get(code) ?? []);
  return [...new Set(heard)]
    .filter((known) => known.charAt(0) === word.charAt(0))
    .map((known) => ({ word: known, cost: COST.soundsLike }));
}

const undoubled = (word: string): string => word.replace(/(.)\1+/g, '$1');

/** Slips of the finger between two words (letters left out, put in, changed, two swapped), or more than `most`. */
export function slipsBetween(a: string, b: string, most: number): number {
  if (Math.abs(a.length - b.length) > most) return most + 1;
  let [last, row] = [[] as number[], Array.from({ length: b.length + 1 }, (_, column) => column)];
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const change = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      const swap =
        i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1] ? (last[j - 2] ?? 0) + 1 : Infinity;
      next[j] = Math.min(change, swap, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1);
    }
    [last, row] = [row, next];
  }
  return row[b.length] ?? most + 1;
}

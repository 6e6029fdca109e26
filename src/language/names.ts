// Names of cuts, parts and containers: as they are written, joined or split, misspelt, or as they sound.
import { doubleMetaphone } from 'double-metaphone';
import { COST, follows, type Reading } from './reading.ts';
import type { Token } from './token.ts';

export type NameKind = 'item' | 'part' | 'container';

/** Canonical names with the names that people say. */
export type NameLists = Readonly<Record<NameKind, ReadonlyMap<string, readonly string[]>>>;

interface Branch {
  readonly next: Map<string, Branch>;
  name?: string;
}

/** The names of one kind, as they are looked up. */
export interface NameIndex {
  readonly root: Branch;
  /** Names without their spaces ("porkloin"). */
  readonly joined: ReadonlyMap<string, string>;
  /** Every word of a name, by its first letter, and by its sound. */
  readonly byLetter: ReadonlyMap<string, readonly string[]>;
  readonly bySound: ReadonlyMap<string, readonly string[]>;
  readonly words: ReadonlySet<string>;
  /** Near words that were looked for before. */
  readonly near: Map<string, readonly NearWord[]>;
}

export function nameIndex(names: ReadonlyMap<string, readonly string[]>): NameIndex {
  const root: Branch = { next: new Map() };
  const joined = new Map<string, string>();
  const words = new Set<string>();
  for (const [name, said] of names)
    for (const phrase of [name, ...said]) {
      const parts = phrase.split(' ');
      addPhrase(root, parts, name);
      joined.set(parts.join(''), name);
      for (const part of parts) words.add(part);
    }
  return { root, joined, words, near: new Map(), byLetter: grouped(words, (word) => [word.charAt(0)]), bySound: grouped(words, sounds) };
}

function addPhrase(root: Branch, parts: readonly string[], name: string): void {
  let branch = root;
  for (const part of parts) {
    const next: Branch = branch.next.get(part) ?? { next: new Map() };
    branch.next.set(part, next);
    branch = next;
  }
  branch.name ??= name;
}

function grouped(words: Iterable<string>, keys: (word: string) => readonly string[]): Map<string, string[]> {
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

/** Words that misspelling correction must leave alone. */
export type Untouched = (word: string) => boolean;

/** Every name that begins at a place: exact ones, else what is nearly one. */
export function readNames(index: NameIndex, tokens: readonly Token[], place: { at: number; untouched: Untouched }): readonly Reading<string>[] {
  const { at, untouched } = place;
  const first = tokens[at];
  if (first?.kind !== 'word') return NONE;
  const exact = [...joinedWords(index, tokens, at), ...written(index, tokens, at)];
  if (exact.length > 0) return exact;
  return nearWords(index, first.text, untouched).length === 0 ? NONE : settle(misspelt(index, tokens, place));
}

const NONE: readonly Reading<string>[] = [];

/** The names written at a place, each length of them. */
function written(index: NameIndex, tokens: readonly Token[], at: number): readonly Reading<string>[] {
  let branch = index.root.next.get(tokens[at]?.text ?? '');
  if (branch === undefined) return NONE;
  const found: Reading<string>[] = [];
  for (let end = at + 1; branch !== undefined; end += 1) {
    if (branch.name !== undefined) found.push({ value: branch.name, end, cost: 0 });
    const next = follows(tokens, end);
    branch = next?.kind === 'word' ? branch.next.get(next.text) : undefined;
  }
  return found;
}

interface NearWord {
  readonly word: string;
  readonly cost: number;
}

/** The names that the words at a place nearly are. */
function misspelt(index: NameIndex, tokens: readonly Token[], { at, untouched }: { at: number; untouched: Untouched }): readonly Reading<string>[] {
  const found: Reading<string>[] = [];
  let reached: { branch: Branch; cost: number }[] = [{ branch: index.root, cost: 0 }];
  for (let end = at; reached.length > 0; end += 1) {
    const token = end === at ? tokens[at] : follows(tokens, end);
    if (token?.kind !== 'word') break;
    const meant = nearWords(index, token.text, untouched);
    reached = reached.flatMap(({ branch, cost }) =>
      meant.flatMap((each) => {
        const next = branch.next.get(each.word);
        return next === undefined ? [] : [{ branch: next, cost: cost + each.cost }];
      }),
    );
    for (const { branch, cost } of reached) if (branch.name !== undefined) found.push({ value: branch.name, end: end + 1, cost });
  }
  return found;
}

/** "rib eye" for "ribeye", "porkloin" for "pork loin": the same letters with other spaces. */
function joinedWords(index: NameIndex, tokens: readonly Token[], at: number): readonly Reading<string>[] {
  const first = tokens[at]?.text ?? '';
  const second = follows(tokens, at + 1);
  const one = index.root.next.has(first) ? undefined : index.joined.get(first);
  const two = second?.kind === 'word' ? index.joined.get(first + second.text) : undefined;
  if (one === undefined && two === undefined) return NONE;
  const found: Reading<string>[] = one === undefined ? [] : [{ value: one, end: at + 1, cost: 1 }];
  return two === undefined ? found : [...found, { value: two, end: at + 2, cost: 1 }];
}

const REMEMBERED = 4000;

/** The near words of a word, found once: the same slips come again and again. */
function nearWords(index: NameIndex, word: string, untouched: Untouched): readonly NearWord[] {
  const known = index.near.get(word);
  if (known !== undefined) return known;
  if (index.near.size >= REMEMBERED) index.near.clear();
  const found = findNear(index, word, untouched);
  index.near.set(word, found);
  return found;
}

/** Words of names within one slip of this one (two from seven letters on), or of the same sound and first letter. */
function findNear(index: NameIndex, word: string, untouched: Untouched): readonly NearWord[] {
  const itself: readonly NearWord[] = index.words.has(word) ? [{ word, cost: 0 }] : [];
  if (word.length < 3 || untouched(word)) return itself;
  return [...itself, ...nearlyWords(index, word)];
}

function nearlyWords(index: NameIndex, word: string): readonly NearWord[] {
  const letter = index.byLetter.get(word.charAt(0)) ?? [];
  const spelt = letter.flatMap((known) => {
    if (known === word || (word.length < 4 && known.length !== word.length + 1)) return [];
    const slips = known.length < 4 ? (undoubled(word) === known ? 1 : 9) : slipsBetween(word, known, known.length >= 7 ? 2 : 1);
    return slips <= (known.length >= 7 ? 2 : 1) ? [{ word: known, cost: COST.misspelt + slips }] : [];
  });
  if (spelt.length > 0) return spelt;
  const heard = sounds(word).flatMap((code) => index.bySound.get(code) ?? []);
  return [...new Set(heard)].filter((known) => known.charAt(0) === word.charAt(0)).map((known) => ({ word: known, cost: COST.soundsLike }));
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
      const swap = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1] ? (last[j - 2] ?? 0) + 1 : Infinity;
      next[j] = Math.min(change, swap, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1);
    }
    [last, row] = [row, next];
  }
  return row[b.length] ?? most + 1;
}

/** Of corrected readings the best of each length; two names equally near are in doubt. */
function settle(near: readonly Reading<string>[]): readonly Reading<string>[] {
  const ends = [...new Set(near.map((each) => each.end))];
  return ends.flatMap((end) => {
    const here = near.filter((each) => each.end === end);
    const least = Math.min(...here.map((each) => each.cost));
    const best = here.filter((each) => each.cost === least);
    const [first] = best;
    if (first === undefined) return [];
    const one = best.every((each) => each.value === first.value);
    return [one ? first : { ...first, cost: first.cost + COST.doubt, doubt: 'name' }];
  });
}

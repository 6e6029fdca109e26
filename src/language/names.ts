// Names of cuts, parts and containers: as they are written, joined or split, misspelt, or as they sound.
import { grouped, type NearIndex, nearIndex, nearWords, slipsBetween, type Untouched } from './near-words.ts';
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
export interface NameIndex extends NearIndex {
  readonly root: Branch;
  /** Names without their spaces ("porkloin"). */
  readonly joined: ReadonlyMap<string, string>;
  /** Those by their first two letters that are long enough to be known with a slip in them. */
  readonly byStart: ReadonlyMap<string, readonly string[]>;
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
  const long = [...joined.keys()].filter((name) => name.length >= SHORTEST_JOINED);
  return { root, joined, byStart: grouped(long, (name) => [name.slice(0, 2)]), ...nearIndex(words) };
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

/** Every name that begins at a place: exact ones, else what is nearly one. `apart`: words that are never half of a name. */
export function readNames(
  index: NameIndex,
  tokens: readonly Token[],
  place: { at: number; untouched: Untouched; apart?: Untouched },
): readonly Reading<string>[] {
  const { at, untouched } = place;
  const first = tokens[at];
  if (first?.kind !== 'word') return NONE;
  const exact = [...joinedWords(index, tokens, at), ...written(index, tokens, at)];
  if (exact.length > 0) return exact;
  const near =
    nearWords(index, first.text, untouched).length === 0 ? NONE : settle(misspelt(index, tokens, place));
  if (near.length > 0 || place.apart === undefined) return near;
  return nearlyJoined(index, tokens, { at, apart: place.apart });
}

const NONE: readonly Reading<string>[] = [];

/** The names of one word that are one slip away from a word. */
export const nearlyNames = ({ root, byLetter }: NameIndex, word: string): readonly string[] =>
  (byLetter.get(word.charAt(0)) ?? []).filter(
    (known) =>
      known.length > 3 && root.next.get(known)?.name !== undefined && slipsBetween(word, known, 1) <= 1,
  );

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

/** The names that the words at a place nearly are. */
function misspelt(
  index: NameIndex,
  tokens: readonly Token[],
  { at, untouched }: { at: number; untouched: Untouched },
): readonly Reading<string>[] {
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
    for (const { branch, cost } of reached)
      if (branch.name !== undefined) found.push({ value: branch.name, end: end + 1, cost });
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

/** Shorter names are near too much else. */
const SHORTEST_JOINED = 6;

/** "ribs eye" for "ribeye": two words that are one slip away from a name when they are put together. */
function nearlyJoined(
  index: NameIndex,
  tokens: readonly Token[],
  { at, apart }: { at: number; apart: Untouched },
): readonly Reading<string>[] {
  const first = tokens[at]?.text ?? '';
  const second = follows(tokens, at + 1);
  if (second?.kind !== 'word' || apart(first) || apart(second.text)) return NONE;
  const together = first + second.text;
  if (together.length < SHORTEST_JOINED) return NONE;
  const near = index.byStart.get(together.slice(0, 2)) ?? [];
  const meant = near
    .filter((name) => slipsBetween(together, name, 1) <= 1)
    .map((name) => index.joined.get(name));
  const [only] = meant;
  return only === undefined || meant.some((each) => each !== only)
    ? NONE
    : [{ value: only, end: at + 2, cost: COST.misspelt + 1 }];
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

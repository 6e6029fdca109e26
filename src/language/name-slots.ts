// Slots that hold a name: of the catalogue, the kitchen's own, or words that may become one.
import type { Language } from './language.ts';
import { nearlyNames, type NameIndex, nameIndex, type NameKind, readNames } from './names.ts';
import { isNumberWord } from './number-words.ts';
import { once, oncePerPlace } from './once.ts';
import { COST, follows } from './reading.ts';
import type { SlotReader, SlotReading } from './slot.ts';
import type { Token } from './token.ts';
import { isUnitWord } from './units.ts';

const NOTHING: readonly SlotReading[] = [];

/** Names of a kind, the kitchen's own among them; and with them the words that may be new names. */
export function nameReaders(
  language: Language,
  kind: NameKind,
  own: ReadonlySet<string> | undefined,
): Record<'known' | 'any' | 'like', SlotReader> {
  const common = language.names[kind];
  const fresh = [...(own ?? [])].filter((name) => !common.joined.has(name.replaceAll(' ', '')));
  const extra =
    fresh.length === 0 ? undefined : nameIndex(new Map(fresh.map((name) => [name, [`${name}s`]])));
  const plain = once((tokens, at): readonly SlotReading[] => {
    const found = named(language, common, tokens, at);
    return extra === undefined ? found : [...found, ...named(language, extra, tokens, at)];
  });
  const known: SlotReader = kind === 'item' ? once(graded(language, outdone(language, plain))) : plain;
  const fits = (each: SlotReading, tokens: readonly Token[], at: number): boolean =>
    kind !== 'part' || !endsInPartOfItem(language, tokens.slice(at, each.end));
  const any: SlotReader = (tokens, at) => [
    ...known(tokens, at),
    ...freeNames(language, tokens, at).filter((each) => fits(each, tokens, at)),
  ];
  return { known, any, like: lookalike(language, common) };
}

/** "local ribeye trim": the trim of a ribeye that has a word before it, and no part of that name. */
function endsInPartOfItem({ names }: Language, words: readonly Token[]): boolean {
  const [, item, part, ...more] = words;
  const isNamed = (index: NameIndex, token: Token): boolean =>
    index.root.next.get(token.text)?.name !== undefined;
  if (item === undefined || part === undefined || more.length > 0) return false;
  return isNamed(names.item, item) && isNamed(names.part, part);
}

/** A common word that is nearly a name ("trip", "born"): beside an amount it is asked about. */
function lookalike({ lookalikes, heardFor, neverNames }: Language, index: NameIndex): SlotReader {
  const isLike = (word: string): boolean =>
    heardFor.has(word) ||
    (lookalikes.has(word) && !neverNames.has(word) && nearlyNames(index, word).length > 0);
  return (tokens, at) => {
    const word = tokens[at]?.text ?? '';
    return isLike(word) ? [{ value: word, end: at + 1, cost: COST.doubt, doubt: 'name' }] : NOTHING;
  };
}

/** "duck fat" is the name of a part: that it is the fat of a duck is less likely. */
function outdone({ names }: Language, plain: SlotReader): SlotReader {
  return (tokens, at) => {
    const items = plain(tokens, at);
    if (items.length === 0) return items;
    const parts = readNames(names.part, tokens, { at, untouched: () => true });
    const longest = Math.max(0, ...parts.filter(({ cost }) => cost === 0).map(({ end }) => end));
    return items.map((each) => (each.end < longest ? { ...each, cost: each.cost + 1 } : each));
  };
}

/** "choice ribeye", "ribeye choice": the cut, with its grade left out. */
function graded({ grades }: Language, plain: SlotReader): SlotReader {
  const gradeEnd = (tokens: readonly Token[], at: number): number => {
    const [first, second] = [tokens[at]?.text ?? '', follows(tokens, at + 1)?.text ?? ''];
    return grades.has(`${first} ${second}`) ? at + 2 : grades.has(first) ? at + 1 : at;
  };
  const past = (tokens: readonly Token[], at: number): number => {
    const end = follows(tokens, at) === undefined ? at : gradeEnd(tokens, at);
    return end === at ? at : past(tokens, end);
  };
  return (tokens, at) => {
    const first = gradeEnd(tokens, at);
    const from = first === at ? at : past(tokens, first);
    const ungraded = from > at && follows(tokens, from) !== undefined ? plain(tokens, from) : [];
    return [...plain(tokens, at), ...ungraded.map((each) => ({ ...each, cost: each.cost + 1 }))].flatMap(
      (each) => {
        const end = past(tokens, each.end);
        return end === each.end ? [each] : [each, { ...each, end, cost: each.cost + 1 }];
      },
    );
  };
}

function named(
  language: Language,
  index: NameIndex,
  tokens: readonly Token[],
  at: number,
): readonly SlotReading[] {
  const untouched = (word: string): boolean =>
    isKnownWord(language, word) ||
    (!index.words.has(word) && Object.values(language.names).some((each) => each.words.has(word)));
  const apart = (word: string): boolean => !canBeNamed(language, word);
  return readNames(index, tokens, { at, untouched, apart });
}

/** Words that are something else already: never corrected into a name. */
const isKnownWord = (language: Language, word: string): boolean =>
  language.lookalikes.has(word) ||
  language.neverNames.has(word) ||
  isNumberWord(language.numbers, word) ||
  isUnitWord(language.units, word);

/** Words that are no name of ours ("goat leg" goes on behind "goat") and nothing else; a number word is never among them. */
const freeNames = oncePerPlace((language: Language, tokens, at): readonly SlotReading[] => {
  if (!canBeNamed(language, tokens[at]?.text ?? '')) return NOTHING;
  const ours = Object.values(language.names).flatMap((index) =>
    named(language, index, tokens, at).map((each) => each.end),
  );
  const known = Math.max(at, ...ours);
  /** One word that is nearly a known name, and a common word besides, is a slip or talk. */
  const isLookalike = (end: number): boolean =>
    end === at + 1 && language.lookalikes.has(tokens[at]?.text ?? '');
  const isName = (token: Token): boolean =>
    Object.values(language.names).some(({ root }) => root.next.get(token.text)?.name !== undefined);
  return freeWords(tokens, at, (word) => canBeNamed(language, word)).filter(
    ({ end }) =>
      end > known &&
      !isLookalike(end) &&
      !tokens.slice(at, end).some(({ text }) => language.grades.has(text)) &&
      !tokens.slice(at, end).every(isName),
  );
});

/** One to three words, each of which may stand in a name. */
export function freeWords(
  tokens: readonly Token[],
  at: number,
  may: (word: string) => boolean,
): readonly SlotReading[] {
  const found: SlotReading[] = [];
  const words: string[] = [];
  for (let end = at; end < at + 3; end += 1) {
    const token = end === at ? tokens[at] : follows(tokens, end);
    if (token?.kind !== 'word' || !may(token.text)) break;
    words.push(token.text);
    found.push({ value: words.join(' '), end: end + 1, cost: COST.freeWord * words.length, free: true });
  }
  return found;
}

function canBeNamed(language: Language, word: string): boolean {
  const { numbers, units, neverNames } = language;
  return (
    word.length > 1 && !neverNames.has(word) && !isNumberWord(numbers, word) && !numbers.oh.has(word) && !numbers.beside.has(word) &&
    !numbers.point.has(word) && !numbers.one.has(word) && !numbers.and.has(word) && !isUnitWord(units, word) && !units.per.has(word) && !units.of.has(word)
  ); // prettier-ignore
}

// Slots that hold a name: of the catalogue, the kitchen's own, or words that may become one.
import type { Language } from './language.ts';
import { type NameIndex, nameIndex, type NameKind, readNames } from './names.ts';
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
): Record<'known' | 'any', SlotReader> {
  const common = language.names[kind];
  const fresh = [...(own ?? [])].filter((name) => !common.joined.has(name.replaceAll(' ', '')));
  const extra =
    fresh.length === 0 ? undefined : nameIndex(new Map(fresh.map((name) => [name, [`${name}s`]])));
  const known = once((tokens, at): readonly SlotReading[] => {
    const found = named(language, common, tokens, at);
    return extra === undefined ? found : [...found, ...named(language, extra, tokens, at)];
  });
  const any: SlotReader = (tokens, at) => [...known(tokens, at), ...freeNames(language, tokens, at)];
  return { known, any };
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
  return readNames(index, tokens, { at, untouched });
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
    ({ end }) => end > known && !isLookalike(end) && !tokens.slice(at, end).every(isName),
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

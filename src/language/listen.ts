// The slots of a line: numbers by their readers, names by the catalogue and the kitchen's own, free words last.
import type { KitchenUnit } from '../core/quantity.ts';
import type { Language } from './language.ts';
import type { ReadSlot } from './match.ts';
import { type NameIndex, nameIndex, type NameKind, readNames } from './names.ts';
import { isNumberWord } from './number-words.ts';
import { COST, follows } from './reading.ts';
import { type Limits, numberReaders, type SlotReader, type SlotReading } from './slots.ts';
import type { Token } from './token.ts';
import { isUnitWord } from './units.ts';

/** Names that the kitchen uses beside the catalogue. */
export interface OwnNames {
  readonly items: ReadonlySet<string>;
  readonly parts: ReadonlySet<string>;
  readonly containers: ReadonlySet<string>;
}

/** For whom a language listens: what a bare number means, what is possible, what names are known. */
export interface Listener {
  readonly language: Language;
  readonly readers: Readonly<Record<string, SlotReader>>;
}

export function listener(language: Language, kitchen: { unit: KitchenUnit; limits: Limits; names?: OwnNames }): Listener {
  const { numbers, units, counters } = language;
  const context = { numbers: { words: numbers, counters }, units, unit: kitchen.unit, limits: kitchen.limits };
  const own = kitchen.names;
  const item = nameReaders(language, 'item', own?.items);
  const part = nameReaders(language, 'part', own?.parts);
  const container = nameReaders(language, 'container', own?.containers);
  return {
    language,
    readers: {
      ...numberReaders(context),
      item: item.known,
      anyItem: item.any,
      part: part.known,
      anyPart: part.any,
      container: container.known,
      anyContainer: container.any,
      supplier: (tokens, at) => freeWords(tokens, at, (word) => !isNumberWord(language.numbers, word) && !isUnitWord(language.units, word)).map((each) => ({ ...each, cost: 1 })),
      text: (tokens, at) => (tokens[at] === undefined ? [] : [{ value: '', end: tokens.length, cost: 0, from: at }]),
    },
  };
}

/** A reader that reads each place once. */
export function readOnce(listener: Listener, tokens: readonly Token[]): ReadSlot {
  const read = new Map<string, readonly SlotReading[]>();
  return (type, at) => {
    const key = `${type}${at}`;
    const known = read.get(key);
    if (known !== undefined) return known;
    const found = cheapestOfEach(listener.readers[type]?.(tokens, at) ?? []);
    read.set(key, found);
    return found;
  };
}

/** Of readings that end at the same place and mean the same, one; a doubt gives way to a clear reading. */
function cheapestOfEach(readings: readonly SlotReading[]): readonly SlotReading[] {
  if (readings.length < 2) return readings;
  const best = new Map<string, SlotReading>();
  for (const reading of readings) {
    const key = `${reading.end} ${reading.doubt === undefined ? JSON.stringify(reading.value) : 'doubt'} ${reading.unit ?? ''}`;
    const known = best.get(key);
    if (known === undefined || reading.cost < known.cost) best.set(key, reading);
  }
  const clear = new Set([...best.values()].filter((each) => each.doubt === undefined).map((each) => each.end));
  return [...best.values()].filter((each) => each.doubt === undefined || each.doubt === 'impossible' || !clear.has(each.end));
}

function nameReaders(language: Language, kind: NameKind, own: ReadonlySet<string> | undefined): Record<'known' | 'any', SlotReader> {
  const common = language.names[kind];
  const fresh = [...(own ?? [])].filter((name) => !common.joined.has(name.replaceAll(' ', '')));
  const extra = fresh.length === 0 ? undefined : nameIndex(new Map(fresh.map((name) => [name, [`${name}s`]])));
  const known: SlotReader = (tokens, at) => [...named(language, common, tokens, at), ...(extra ? named(language, extra, tokens, at) : [])];
  const any: SlotReader = (tokens, at) => {
    const found = known(tokens, at);
    return found.some((each) => each.cost < COST.misspelt) ? found : [...found, ...freeNames(language, tokens, at)];
  };
  return { known, any };
}

function named(language: Language, index: NameIndex, tokens: readonly Token[], at: number): readonly SlotReading[] {
  return readNames(index, tokens, { at, untouched: (word) => isKnownWord(language, word) });
}

/** Words that are something else already: never corrected into a name. */
const isKnownWord = (language: Language, word: string): boolean =>
  language.lookalikes.has(word) || language.neverNames.has(word) || isNumberWord(language.numbers, word) || isUnitWord(language.units, word);

/** Words that are no name of ours ("goat leg" goes on behind "goat") and nothing else; a number word is never among them. */
function freeNames(language: Language, tokens: readonly Token[], at: number): readonly SlotReading[] {
  const ours = Object.values(language.names).flatMap((index) => named(language, index, tokens, at).map((each) => each.end));
  const known = Math.max(at, ...ours);
  return freeWords(tokens, at, (word) => canBeNamed(language, word)).filter((each) => each.end > known);
}

/** One to three words, each of which may stand in a name. */
function freeWords(tokens: readonly Token[], at: number, may: (word: string) => boolean): readonly SlotReading[] {
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

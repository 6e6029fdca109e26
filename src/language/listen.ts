// The slots of a line: numbers by their readers, names by the catalogue and the kitchen's own, free words last.
import type { KitchenUnit } from '../core/quantity.ts';
import type { Language } from './language.ts';
import type { ReadSlot } from './match.ts';
import { type NameIndex, nameIndex, type NameKind, readNames } from './names.ts';
import { isNumberWord } from './number-words.ts';
import { oncePerPlace } from './once.ts';
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
  /** Whether a number, a sum or a weight can begin with a token. */
  readonly startsNumber: (token: Token) => boolean;
}

export function listener(language: Language, kitchen: { unit: KitchenUnit; limits: Limits; names?: OwnNames }): Listener {
  const { numbers, units, counters } = language;
  const context = { numbers: { words: numbers, counters }, units, unit: kitchen.unit, limits: kitchen.limits };
  const own = kitchen.names;
  const item = nameReaders(language, 'item', own?.items);
  const part = nameReaders(language, 'part', own?.parts);
  const container = nameReaders(language, 'container', own?.containers);
  const startsNumber = numberStarts(language);
  return {
    language,
    startsNumber,
    readers: {
      ...guarded(numberReaders(context), startsNumber),
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

/** Most places hold no number: they are told by their first word, before any reader is asked. */
function guarded(readers: Readonly<Record<string, SlotReader>>, starts: Listener['startsNumber']): Record<string, SlotReader> {
  const guard =
    (read: SlotReader, type: string): SlotReader =>
    (tokens, at) => {
      const token = tokens[at];
      return token !== undefined && (starts(token) || type === 'plural') ? read(tokens, at) : NOTHING;
    };
  return Object.fromEntries(Object.entries(readers).map(([type, read]) => [type, guard(read, type)]));
}

const NOTHING: readonly SlotReading[] = [];

function numberStarts({ numbers, units }: Language): Listener['startsNumber'] {
  const words = new Set([
    ...numbers.single.keys(), ...numbers.oh, ...numbers.point, ...numbers.one, ...numbers.fractions.keys(), ...numbers.dozen.keys(),
    ...numbers.sure.keys(), ...numbers.beside.keys(), ...units.weight.keys(), ...units.sign, ...units.whole,
  ]); // prettier-ignore
  return (token) => token.kind === 'figure' || words.has(token.text);
}

/** A reader that reads each place once. */
export function readOnce(listener: Listener, tokens: readonly Token[]): ReadSlot {
  const read = new Map<string, (readonly SlotReading[] | undefined)[]>();
  return (type, at) => {
    const places = read.get(type) ?? [];
    if (places.length === 0) read.set(type, places);
    return (places[at] ??= cheapestOfEach(listener.readers[type]?.(tokens, at) ?? NOTHING));
  };
}

/** Of readings that end at the same place and mean the same, one; a doubt gives way to a clear reading. */
function cheapestOfEach(readings: readonly SlotReading[]): readonly SlotReading[] {
  if (readings.length < 2) return readings;
  const best = new Map<string, SlotReading>();
  for (const reading of readings) {
    const key = `${reading.end} ${reading.doubt === undefined ? String(reading.value) : 'doubt'} ${reading.unit ?? ''}`;
    const known = best.get(key);
    if (known === undefined || reading.cost < known.cost) best.set(key, reading);
  }
  const clear = new Set([...best.values()].filter((each) => each.doubt === undefined).map((each) => each.end));
  return [...best.values()].filter((each) => each.doubt === undefined || each.doubt === 'impossible' || !clear.has(each.end));
}

/** Names of a kind, the kitchen's own among them; and with them the words that may be new names. */
function nameReaders(language: Language, kind: NameKind, own: ReadonlySet<string> | undefined): Record<'known' | 'any', SlotReader> {
  const common = language.names[kind];
  const fresh = [...(own ?? [])].filter((name) => !common.joined.has(name.replaceAll(' ', '')));
  const extra = fresh.length === 0 ? undefined : nameIndex(new Map(fresh.map((name) => [name, [`${name}s`]])));
  const known: SlotReader = (tokens, at) => {
    const found = named(language, common, tokens, at);
    return extra === undefined ? found : [...found, ...named(language, extra, tokens, at)];
  };
  const any: SlotReader = (tokens, at) => [...known(tokens, at), ...freeNames(language, tokens, at)];
  return { known, any };
}

function named(language: Language, index: NameIndex, tokens: readonly Token[], at: number): readonly SlotReading[] {
  return readNames(index, tokens, { at, untouched: (word) => isKnownWord(language, word) });
}

/** Words that are something else already: never corrected into a name. */
const isKnownWord = (language: Language, word: string): boolean =>
  language.lookalikes.has(word) || language.neverNames.has(word) || isNumberWord(language.numbers, word) || isUnitWord(language.units, word);

/** Words that are no name of ours ("goat leg" goes on behind "goat") and nothing else; a number word is never among them. */
const freeNames = oncePerPlace((language: Language, tokens, at): readonly SlotReading[] => {
  if (!canBeNamed(language, tokens[at]?.text ?? '')) return NOTHING;
  const ours = Object.values(language.names).flatMap((index) => named(language, index, tokens, at).map((each) => each.end));
  const known = Math.max(at, ...ours);
  const isName = (token: Token): boolean => Object.values(language.names).some(({ root }) => root.next.get(token.text)?.name !== undefined);
  return freeWords(tokens, at, (word) => canBeNamed(language, word)).filter(({ end }) => end > known && !tokens.slice(at, end).every(isName));
});

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

// The slots of a line: numbers by their readers, names by the catalogue and the kitchen's own, free words last.
import { isDecimal } from '../core/decimal.ts';
import type { KitchenUnit } from '../core/quantity.ts';
import type { Language } from './language.ts';
import type { ReadSlot } from './match.ts';
import { codeReader } from './code-slot.ts';
import { foodReaders } from './food-words.ts';
import { freeWords, nameReaders } from './name-slots.ts';
import { isNumberWord } from './number-words.ts';
import type { Limits, SlotReader, SlotReading } from './slot.ts';
import { numberReaders } from './slots.ts';
import { timeReaders } from './time-slots.ts';
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

export function listener(
  language: Language,
  kitchen: { unit: KitchenUnit; limits: Limits; names?: OwnNames },
): Listener {
  const { numbers, units, counters } = language;
  const context = {
    numbers: { words: numbers, counters },
    units,
    unit: kitchen.unit,
    limits: kitchen.limits,
  };
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
      likeItem: item.like,
      part: part.known,
      anyPart: part.any,
      likePart: part.like,
      container: container.known,
      anyContainer: container.any,
      ...foodReaders(language.foods),
      // What cools may be called anything that is no number, and never ends in what stands beside amounts ('is', 'at').
      freeFood: (tokens, at) =>
        freeWords(tokens, at, (word) => !isNumberWord(language.numbers, word) && !language.chatter.has(word))
          .filter(({ end }) => !language.amountWords.has(tokens[end - 1]?.text ?? ''))
          .map((each) => ({ ...each, cost: 1 })),
      code: codeReader(context.numbers),
      supplier: (tokens, at) =>
        freeWords(
          tokens,
          at,
          (word) => !isNumberWord(language.numbers, word) && !isUnitWord(language.units, word),
        ).map((each) => ({ ...each, cost: 1 })),
      // Where a day may stand in the same place ("from monday", "from now on"), only what can be nothing but a name.
      vendor: (tokens, at) =>
        freeWords(tokens, at, (word) => isVendor(language, word)).map((each) => ({ ...each, cost: 1 })),
      // Before a verb, nobody of the house.
      seller: (tokens, at) =>
        freeWords(tokens, at, (word) => isVendor(language, word) && !language.chatter.has(word)).map(
          (each) => ({
            ...each,
            cost: 1,
          }),
        ),
      ...timeReaders(language),
      text: (tokens, at) =>
        tokens[at] === undefined ? [] : [{ value: '', end: tokens.length, cost: 0, from: at }],
    },
  };
}

const isVendor = ({ numbers, units, neverNames, times }: Language, word: string): boolean =>
  !isNumberWord(numbers, word) &&
  !isUnitWord(units, word) &&
  !neverNames.has(word) &&
  !Object.hasOwn(times.months, word);

/** Most places hold no number: they are told by their first word, before any reader is asked. */
function guarded(
  readers: Readonly<Record<string, SlotReader>>,
  starts: Listener['startsNumber'],
): Record<string, SlotReader> {
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

/** Values of slots that are alike are written alike; numbers by themselves come once for each end. */
const valueKey = (value: SlotReading['value']): string =>
  typeof value !== 'object'
    ? String(value)
    : isDecimal(value)
      ? value.toString()
      : Array.isArray(value)
        ? value.join(' ')
        : '';

/** Of readings that end at the same place and mean the same, one; a doubt gives way to a clear reading. */
function cheapestOfEach(readings: readonly SlotReading[]): readonly SlotReading[] {
  if (readings.length < 2) return readings;
  const best = new Map<string, SlotReading>();
  for (const reading of readings) {
    const key = `${reading.end} ${reading.doubt === undefined ? valueKey(reading.value) : 'doubt'} ${reading.unit ?? ''}`;
    const known = best.get(key);
    if (known === undefined || reading.cost < known.cost) best.set(key, reading);
  }
  const clear = new Set(
    [...best.values()].filter((each) => each.doubt === undefined).map((each) => each.end),
  );
  return [...best.values()].filter(
    (each) => each.doubt === undefined || each.doubt === 'impossible' || !clear.has(each.end),
  );
}

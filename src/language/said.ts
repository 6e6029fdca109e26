// What a sentence that was read says: its slots, and what is in doubt about them.
import type { Cover } from './cover.ts';
import type { Match } from './match.ts';
import type { SlotReading, SlotValue } from './slot.ts';
import type { Token } from './token.ts';

/** Why something said cannot be taken as it is: the slot in question, or the words that nothing reads. */
export interface Doubt {
  readonly code: string;
  readonly slot?: string;
  /** The words in question, as said. */
  readonly words?: string;
}

/** One thing that was said. With a doubt it is not to be recorded; its slots are those that are clear. */
export interface Said {
  readonly kind: string;
  readonly slots: Readonly<Record<string, SlotValue | boolean>>;
  readonly doubt?: Doubt;
  /** Fair readings of a sentence that is always asked about: the answer, and the intent that it makes. */
  readonly readings?: Readonly<Record<string, string>>;
  /** The words, where a question mark ends a sentence that says how it is. */
  readonly questioned?: string;
  /** Whether a number, and not only a word of command, was said. */
  readonly firm: boolean;
}

/** "yes, correct" is one yes. */
export const once = (said: readonly Said[]): readonly Said[] =>
  said.filter(
    (each, at) =>
      each.firm || each.doubt !== undefined || JSON.stringify(each) !== JSON.stringify(said[at - 1]),
  );

export function asSaid(match: Match, text: string, tokens: readonly Token[]): Said {
  const { meaning, slots } = match;
  const values: Record<string, SlotValue | boolean> = { ...meaning.set };
  let doubt: Doubt | undefined = meaning.ask === undefined ? undefined : { code: meaning.ask };
  for (const [name, reading] of Object.entries(slots)) {
    if (reading.doubt === undefined) {
      Object.assign(values, reading.also);
      values[name] = reading.value === '' ? rawFrom(reading, text, tokens) : reading.value;
    } else doubt = { code: reading.doubt, slot: name, words: wordsOf(match, text, tokens) };
  }
  doubt ??= unitDoubt(slots);
  return {
    kind: meaning.intent,
    slots: values,
    ...(doubt === undefined ? {} : { doubt }),
    ...(meaning.readings === undefined ? {} : { readings: meaning.readings }),
    ...(tokens[match.end - 1]?.asks === true ? { questioned: wordsOf(match, text, tokens) } : {}),
    firm: Object.values(slots).some((reading) => typeof reading.value !== 'string'),
  };
}

/** A price without a unit beside a weight in the other unit: per which of the two? */
function unitDoubt(slots: Match['slots']): Doubt | undefined {
  const { weight, price } = slots;
  if (weight?.unit === undefined || price === undefined || price.per !== undefined) return undefined;
  return price.bareOther?.includes(weight.unit) === true ? { code: 'priceUnit', slot: 'price' } : undefined;
}

const rawFrom = (reading: SlotReading, text: string, tokens: readonly Token[]): string => {
  if (reading.from === undefined) return '';
  const before = tokens[reading.from - 1]?.to ?? 0;
  return text
    .slice(before)
    .replace(/^[\s:,-]+/, '')
    .trim();
};

const wordsOf = ({ from, end }: Match, text: string, tokens: readonly Token[]): string =>
  text.slice(tokens[from]?.from ?? 0, tokens[end - 1]?.to ?? text.length);

/** Where two equally good readings of the line differ, what differs is asked about. */
export function agree(
  kept: readonly Said[],
  other: Cover,
  line: { text: string; tokens: readonly Token[] },
): readonly Said[] {
  const rest = other.matches.map((match) => JSON.stringify(asSaid(match, line.text, line.tokens)));
  return kept.map((said) => {
    if (said.doubt !== undefined || rest.includes(JSON.stringify(said))) return said;
    return { ...said, doubt: { code: 'twoReadings', words: line.text.trim() } };
  });
}

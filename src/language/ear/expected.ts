// Everything that a recogniser is told before it listens: the grammar, how its words sound, and a hint in plain words.
import type { Language } from '../language.ts';
import type { Ear } from './ear.ts';
import { grammarFor, type Listening } from './grammar.ts';
import { nearOf } from './near.ts';
import { soundsOf } from './spelling.ts';

type Pronunciations = readonly (readonly [word: string, phones: string])[];

export interface Expectation {
  readonly grammar: string;
  readonly pronounced: Pronunciations;
  readonly spelled: Pronunciations;
  readonly near: (words: string) => readonly string[];
  readonly isUnusual: (words: string) => boolean;
  readonly isMixable: (words: string) => boolean;
  readonly hint: string;
}

export function expectation(language: Language, ear: Ear, listening: Listening): Expectation {
  const { text, words, rare } = grammarFor(language, ear, listening);
  const own = ear.sounds.words;
  return {
    grammar: text,
    pronounced: [...words].flatMap((word) => (own[word] ?? []).map((phones) => [word, phones] as const)),
    spelled: [...words]
      .filter((word) => !Object.hasOwn(own, word))
      .map((word) => [word, soundsOf(ear.sounds, word)] as const),
    near: nearOf(ear, listening),
    isUnusual: (line) => rare.some((name) => ` ${line} `.startsWith(` ${name} `)) || isUnlikely(ear, line),
    isMixable: (line) => line.split(' ').some((word) => ear.near.alike.includes(word)),
    hint: hintOf(ear, listening),
  };
}

/** More of a unit than anybody says: the number stands before the unit, or before its last digit. */
const isUnlikely = ({ unlikely }: Ear, line: string): boolean =>
  line
    .split(' ')
    .some((word, at, all) =>
      all.slice(Math.max(0, at - 2), at).some((each) => unlikely[word]?.includes(each)),
    );

/** Names first: a model of general speech knows numbers and units, but not silverskin. */
function hintOf(ear: Ear, { items, parts, onTable }: Listening): string {
  const kinds = Object.values(ear.kinds).flatMap(({ words }) => words);
  const names = [
    ...new Set([...onTable, ...items, ...parts, ...ear.often, ...Object.keys(ear.sounds.words)]),
  ];
  return [...names, ...new Set(kinds)].join(', ');
}

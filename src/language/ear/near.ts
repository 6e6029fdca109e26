// Sentences that are easily taken for another one: the same but for one number or name. A recogniser that offers no second
// best is asked how well these would fit.
import type { Ear } from './ear.ts';
import type { Listening } from './grammar.ts';

export function nearOf(ear: Ear, { onTable }: Listening): (words: string) => readonly string[] {
  const names = [...new Set([...ear.often, ...onTable])];
  const long = names.filter((name) => name.includes(' ')).sort((a, b) => b.length - a.length);
  return (words) => {
    // A name of several words is changed as a whole.
    const joined = long.reduce((text, name) => text.replace(name, name.replaceAll(' ', '_')), words);
    const line = joined.split(' ');
    const found = line.flatMap((_, at) =>
      [
        ...numbers(ear.near, line, at),
        ...exchanged(ear.near.units, line, at),
        ...named(at === 0 ? [...names, ...ear.near.likeNames] : names, line, at),
      ].map((word) =>
        [...line.slice(0, at), word, ...line.slice(at + 1)].filter((each) => each !== '').join(' '),
      ),
    );
    return [...new Set(found.map((text) => text.replaceAll('_', ' ')))].filter((text) => text !== words);
  };
}

type Near = Ear['near'];
type Line = readonly string[];

const exchanged = (others: readonly string[], line: Line, at: number): readonly string[] =>
  others.includes(line[at] ?? '') ? others : [];

function named(names: readonly string[], line: Line, at: number): readonly string[] {
  const name = line[at]?.replaceAll('_', ' ') ?? '';
  return names.includes(name) ? names : [];
}

/** What may stand in the place of a number word, an added or a lost digit with it. */
function numbers(near: Near, line: Line, at: number): readonly string[] {
  const [word = '', before = '', after = ''] = [line[at], line[at - 1], line[at + 1]];
  const { digits, teens, tens, zeros, point } = near;
  if (word === point && at === 1) return digits.map((digit) => `${digit} ${word}`);
  if (![...digits, ...teens, ...tens, ...zeros].includes(word)) return [];
  const isBehind =
    before === point || tens.includes(before) || zeros.includes(before) || line[at - 2] === point;
  const more = before === point || tens.includes(word) ? digits : [];
  return [
    ...(isBehind ? digits : [...digits, ...teens, ...tens]),
    ...(before === point ? zeros : []),
    ...(after === point ? zeros.slice(0, 1) : []),
    ...(digits.includes(after) ? [] : more.map((digit) => `${word} ${digit}`)),
    ...(tens.includes(before) || line[at - 2] === point || after === point ? [''] : []),
  ];
}

// A line's numbers are asked for by many slots at the same place: each reader reads a place once.
import type { Token } from './token.ts';

type PlaceReader<Words, Result> = (words: Words, tokens: readonly Token[], at: number) => Result;

/** The same reader, remembering what it read for as long as the line's tokens live. */
export function oncePerPlace<Words extends object, Result>(
  read: PlaceReader<Words, Result>,
): PlaceReader<Words, Result> {
  const known = new WeakMap<readonly Token[], (Result | undefined)[]>();
  return (words, tokens, at) => {
    let places = known.get(tokens);
    if (places === undefined) known.set(tokens, (places = []));
    return (places[at] ??= read(words, tokens, at));
  };
}

// A line's numbers are asked for by many slots at the same place: each reader reads a place once.
import type { Token } from './token.ts';

type PlaceReader<Words, Result> = (words: Words, tokens: readonly Token[], at: number) => Result;

/** The same reader, remembering what it read of the line that it read last. */
export function oncePerPlace<Words extends object, Result>(
  read: PlaceReader<Words, Result>,
): PlaceReader<Words, Result> {
  let line: readonly Token[] | undefined;
  let places: (Result | undefined)[] = [];
  return (words, tokens, at) => {
    if (tokens !== line) [line, places] = [tokens, []];
    // What is read within may be of another line: then this one's places are no more the last.
    const mine = places;
    return (mine[at] ??= read(words, tokens, at));
  };
}

/** The same for a reader that knows its words: several types of slots filter what it read. */
export function once<Result>(
  read: (tokens: readonly Token[], at: number) => Result,
): (tokens: readonly Token[], at: number) => Result {
  const remembering = oncePerPlace((_: object, tokens, at) => read(tokens, at));
  return (tokens, at) => remembering(read, tokens, at);
}

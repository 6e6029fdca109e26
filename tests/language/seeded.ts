// Chance that repeats itself: the same seed gives the same lines on every machine.

/** Whole numbers from 0 up to, not including, `below`. */
export type Draw = (below: number) => number;

/** A small generator of 32 bits (mulberry32, by Tommy Ettinger, in the public domain). */
export function seeded(seed: number): Draw {
  let state = seed >>> 0;
  return (below) => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return Math.floor((((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296) * below);
  };
}

export const pick = <T>(draw: Draw, from: readonly T[]): T => {
  const found = from[draw(from.length)];
  if (found === undefined) throw new Error('nothing to pick from');
  return found;
};

export const times = <T>(count: number, make: (index: number) => T): readonly T[] =>
  Array.from({ length: count }, (_, index) => make(index));

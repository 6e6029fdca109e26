// Chance that can be repeated: the same seed, the same run.

/** Numbers from 0 up to 1. A linear congruential generator (constants of Numerical Recipes), its high bits only. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    // The low bits of such a generator repeat soon.
    return (state >>> 8) / 2 ** 24;
  };
}

// How entries about portions add up: a count, a size, a weighed total, each said by itself or together.
import { sum, ZERO } from './decimal.ts';
import type { FactOf } from './facts.ts';
import type { Grams } from './quantity.ts';

/** A run of portions of one size; either may be unsaid. */
export interface Batch {
  readonly count?: number;
  readonly eachGrams?: Grams;
}

export interface Portions {
  readonly batches: readonly Batch[];
  /** The weighed total, where one was said. */
  readonly grams?: Grams;
  /** Weights of single portions, in the order said. */
  readonly list: readonly Grams[];
}

/** `add` opens a new batch, of the last size where none was said; `set` lays what was said over the one batch there is. */
export function portion(portions: Portions, fact: FactOf<'portioned'>): Portions {
  const last = portions.batches.at(-1);
  const eachGrams = fact.eachGrams ?? last?.eachGrams;
  if (fact.mode === 'add') {
    const batches =
      fact.count === undefined ? portions.batches : [...portions.batches, { count: fact.count, eachGrams }];
    return { ...portions, batches, grams: weightWith(portions, { ...fact, eachGrams }) };
  }
  const grams = fact.grams ?? portions.grams;
  if (fact.count === undefined && fact.eachGrams === undefined) return { ...portions, grams };
  return { ...portions, grams, batches: [{ count: fact.count ?? countOf(portions), eachGrams }] };
}

/** The weighed total with what is added: each by its weight, else by count and size, as soon as one was weighed. */
function weightWith(portions: Portions, added: FactOf<'portioned'>): Grams | undefined {
  if (added.grams === undefined && portions.grams === undefined) return undefined;
  return (portions.grams ?? nominalOf(portions.batches)).plus(added.grams ?? nominalOf([added]));
}

/** Σ count × size of the batches of which both were said. */
const nominalOf = (batches: readonly Batch[]): Grams =>
  sum(batches.map(({ count, eachGrams }) => eachGrams?.times(count ?? 0) ?? ZERO));

/** How many portions were counted; undefined where no count was said. */
export function countOf(portions: Portions): number | undefined {
  const counts = portions.batches.flatMap(({ count }) => (count === undefined ? [] : [count]));
  return counts.length === 0 ? undefined : counts.reduce((total, count) => total + count, 0);
}

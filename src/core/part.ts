// A part of a piece that was weighed: trim, fat, bone.
import { type Decimal, ZERO } from './decimal.ts';
import type { FactOf } from './facts.ts';
import type { Grams } from './quantity.ts';

export interface Part {
  readonly part: string;
  readonly grams: Grams;
  readonly creditPerLb?: Decimal;
}

/** The parts after one more weight: set, or added to what was there. */
export function weigh(parts: readonly Part[], fact: FactOf<'weighed'>): readonly Part[] {
  const before = parts.find((part) => part.part === fact.part);
  const grams = fact.mode === 'add' ? (before?.grams ?? ZERO).plus(fact.grams) : fact.grams;
  const after: Part = { part: fact.part, grams };
  return before === undefined ? [...parts, after] : parts.map((part) => (part === before ? after : part));
}

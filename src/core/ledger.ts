// The remembered values of one thing (the price of a cut, the credit of a part), newest last. Nothing is taken
// out: a line may cover an earlier entry (a correction, an undo), and a covered line covers nothing, so that
// taking back a correction restores what was there.
import type { Decimal } from './decimal.ts';

/** A price per pound, a weight in grams or a rate; for a price said by the portion, its price and size too. */
export interface Remembered {
  readonly amount: Decimal;
  readonly each?: Decimal;
  readonly eachGrams?: Decimal;
}

/** A setting of the kitchen or a reminder, as it is written. */
export interface Chosen {
  readonly text: string;
}

export interface LedgerLine {
  readonly entry: string;
  readonly at: string;
  /** Absent where the line only says that the entry it covers does not hold here any more. */
  readonly value?: Remembered | Chosen;
  readonly covers?: string;
}
export type Ledger = readonly LedgerLine[];

/** How many lines are kept: the depth to which values can be taken back one after the other. */
const DEPTH = 12;

export const write = (ledger: Ledger, line: LedgerLine): Ledger => [...ledger, line].slice(-DEPTH);

/** The newest value that is not covered, and when it was said; undefined where nothing holds. */
export function newest(
  ledger: Ledger,
): { readonly value: Remembered | Chosen; readonly at: string; readonly entry: string } | undefined {
  const covered = new Set<string>();
  for (let index = ledger.length - 1; index >= 0; index -= 1) {
    const line = ledger[index];
    if (line === undefined || covered.has(line.entry)) continue;
    if (line.value !== undefined) return { value: line.value, at: line.at, entry: line.entry };
    if (line.covers !== undefined) covered.add(line.covers);
  }
  return undefined;
}

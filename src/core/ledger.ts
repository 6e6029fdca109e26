// The remembered values of one thing (the price of a cut, the credit of a part), newest last. Nothing is taken
// out: a line may cover an earlier entry (a correction, an undo), and a covered line covers nothing, so that
// taking back a correction restores what was there.
import type { Decimal } from './decimal.ts';

/** A price per pound, a weight in grams or a rate; of a price what was said with it. */
export interface Remembered {
  readonly amount: Decimal;
  readonly each?: Decimal;
  readonly eachGrams?: Decimal;
  readonly supplier?: string;
  /** UTC instant from which it holds, where that is later than when it was said. */
  readonly from?: string;
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

export const write = (ledger: Ledger, line: LedgerLine): Ledger => writeKeeping(DEPTH, ledger, line);

/** For what is listed, not only taken back. */
export const writeKeeping = (depth: number, ledger: Ledger, line: LedgerLine): Ledger =>
  [...ledger, line].slice(-depth);

export interface Held {
  readonly value: Remembered | Chosen;
  /** When it was said, or the later time from which it holds. */
  readonly at: string;
  /** The entry that said it. */
  readonly entry: string;
}

/**
 * The value that holds at a time: the last one said that is not covered, unless one with a later date of its own has
 * come into force since. Without a time, what is dated does not hold yet.
 */
export function newest(ledger: Ledger, now = ''): Held | undefined {
  let held: Held | undefined;
  for (const { entry, at, value } of standingLines(ledger).toReversed()) {
    if (value === undefined) continue;
    const from = dateOf(value);
    const isNewer = held === undefined || (from !== undefined && from > held.at);
    if (isNewer && (from === undefined || from <= now)) held = { value, at: from ?? at, entry };
  }
  return held;
}

/** The lines with a value that no later line covers, in their order. */
export function standingLines(ledger: Ledger): readonly LedgerLine[] {
  const covered = new Set<string>();
  const standing: LedgerLine[] = [];
  for (const line of ledger.toReversed()) {
    if (covered.has(line.entry)) continue;
    if (line.value !== undefined) standing.push(line);
    else if (line.covers !== undefined) covered.add(line.covers);
  }
  return standing.toReversed();
}

const dateOf = (value: Remembered | Chosen): string | undefined => ('from' in value ? value.from : undefined);

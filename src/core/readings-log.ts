// The temperatures of food, as the memory of the kitchen keeps the newest of them.
import { type Decimal, decimal } from './decimal.ts';
import type { FactOf, LotId, Recorded } from './facts.ts';
import { type Ledger, standingLines } from './ledger.ts';
import type { Stage } from './safety-facts.ts';

export const READINGS_KEY = 'readings';
/** How many lines are kept: a week or two of a busy grill. */
export const READINGS_KEPT = 200;

export interface LoggedReading {
  /** Instant. */
  readonly at: string;
  readonly by: string;
  /** As said; of a grind without a name its number tells. */
  readonly what?: string;
  readonly lot?: LotId;
  readonly degreesF: Decimal;
  readonly limitF?: Decimal;
  readonly stage: Stage;
  readonly passed: boolean;
}

export const readingText = (
  { what, degreesF, limitF, stage, passed }: FactOf<'temperatureRead'>,
  { lot, speaker }: Pick<Recorded, 'lot' | 'speaker'>,
): string =>
  JSON.stringify({
    by: speaker,
    what,
    lot,
    degreesF: degreesF.toString(),
    limitF: limitF?.toString(),
    stage,
    passed,
  });

/** The oldest first; what was taken back is not among them. */
export const readingsIn = (memory: ReadonlyMap<string, Ledger>): readonly LoggedReading[] =>
  standingLines(memory.get(READINGS_KEY) ?? []).flatMap(({ at, value }) => {
    if (value === undefined || !('text' in value)) return [];
    const { degreesF, limitF, ...said } = JSON.parse(value.text) as Written;
    const limit = limitF === undefined ? {} : { limitF: decimal(limitF) };
    return [{ ...said, at, degreesF: decimal(degreesF), ...limit }];
  });

type Written = Omit<LoggedReading, 'at' | 'degreesF' | 'limitF'> & { degreesF: string; limitF?: string };

// The checks of the thermometers, as the memory of the kitchen keeps the newest of them.
import type { Check } from './lots.ts';
import { decimal } from './decimal.ts';
import { CHECK_POINTS, CHECK_TOLERANCE_F } from './heat.ts';
import { type Ledger, standingLines } from './ledger.ts';

export const CHECKS_KEY = 'thermometer';
/** How many lines are kept: some weeks of checking each shift. */
export const CHECKS_KEPT = 80;

export const checkText = ({ point, degreesF }: Pick<Check, 'point' | 'degreesF'>): string =>
  `${point} ${degreesF.toString()}`;

/** The oldest first; what was taken back is not among them. */
export const checksIn = (memory: ReadonlyMap<string, Ledger>): readonly Check[] =>
  standingLines(memory.get(CHECKS_KEY) ?? []).flatMap(({ at, value }) => {
    if (value === undefined || !('text' in value)) return [];
    const [point, degrees = ''] = value.text.split(' ');
    return [{ at, point: point === 'ice' ? 'ice' : 'boiling', degreesF: decimal(degrees) }];
  });

/** Beyond the tolerance of the point it was held in. */
export const isOff = ({ point, degreesF }: Pick<Check, 'point' | 'degreesF'>): boolean =>
  degreesF.minus(CHECK_POINTS[point]).abs().gt(CHECK_TOLERANCE_F);

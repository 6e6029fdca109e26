// How often a cut is tested of late: what turns a saving per test into one per week.
import { decimal, type Decimal } from './decimal.ts';
import type { Pool } from './pool.ts';

const WEEK_MS = 7 * 24 * 3600 * 1000;
/** How far back "of late" goes. */
export const RATE_WEEKS = 8;

export interface Logged {
  readonly pool: Pick<Pool, 'oldestClosedAt'>;
  /** When the newest closed tests that count were closed; of very many, as many as were read. */
  readonly closedAt: readonly string[];
  readonly now: string;
}

/**
 * Where the tests of the item go back further than eight weeks: those of the last eight ÷ 8. Else the tests after the first, which only
 * began the count, ÷ the weeks from it until now. Undefined where nobody can tell: within the first week, and with none of late.
 */
export function testsPerWeek({ pool, closedAt, now }: Logged): Decimal | undefined {
  const since = Date.parse(now) - RATE_WEEKS * WEEK_MS;
  const recent = closedAt.map((at) => Date.parse(at)).filter((at) => at >= since);
  const first = Math.min(...recent);
  const isLonger = pool.oldestClosedAt !== undefined && Date.parse(pool.oldestClosedAt) < since;
  const isWhole = isLonger && recent.length < closedAt.length;
  if (isWhole) return recent.length === 0 ? undefined : decimal(recent.length.toString()).div(RATE_WEEKS);
  const span = Date.parse(now) - first;
  if (recent.length < 2 || !(span >= WEEK_MS)) return undefined;
  return decimal((recent.length - 1).toString())
    .times(WEEK_MS)
    .div(span);
}

// Labour counts in the verdict where it is avoidable. Whether hours would really fall if nothing were cut is for the
// kitchen to say, and often a matter of opinion: where it decides, both answers are given.
import { breakEven, type Offer } from './break-even.ts';
import { type Choice, choose } from './choice.ts';
import type { Sums } from './costs.ts';
import { type Decimal, ZERO } from './decimal.ts';
import type { PerLb } from './money.ts';
import type { Pool } from './pool.ts';

/** The sums with all labour avoidable, or all of it paid anyway. */
export function withLabor<S extends Sums>(sums: S, isAvoidable: boolean): S {
  const labor = sums.avoidableLabor.plus(sums.fixedLabor);
  return { ...sums, avoidableLabor: isAvoidable ? labor : ZERO, fixedLabor: isAvoidable ? ZERO : labor };
}

/** The answer with labour counted the other way. */
export interface OtherLabor {
  readonly isCounted: boolean;
  readonly choice: Choice;
  readonly savingPerLb: PerLb;
}

export interface Judged {
  readonly offer: Offer;
  readonly yieldPct?: Decimal;
  readonly pool: Pool;
}

/** Absent where no labour is known, or where it does not change the answer. */
export function otherLabor({ offer, yieldPct, pool }: Judged, choice: Choice): OtherLabor | undefined {
  const { avoidableLabor, fixedLabor } = offer.sums;
  if (choice === 'unknown' || avoidableLabor.plus(fixedLabor).isZero()) return undefined;
  const isCounted = avoidableLabor.isZero();
  const points = breakEven({ ...offer, sums: withLabor(offer.sums, isCounted) });
  const other = choose(points, yieldPct, pool);
  if (other === choice || points.savingPerLb === undefined) return undefined;
  return { isCounted, choice: other, savingPerLb: points.savingPerLb };
}

// Which received weights are worth a question: ten times, or a tenth, of what the item usually comes in; and which sums.
import { decimal, type Decimal } from './decimal.ts';
import { GRAMS_PER, type Grams } from './quantity.ts';

/** In grams, what each item usually comes in (a piece, a bag, a case), the lightest first. */
export type UsualWeights = ReadonlyMap<string, readonly Grams[]>;

// Pieces differ by a third or so from the usual weight: eight times it may well be a missing point in a light one.
const FAR = decimal('8');
const CASE_LOW = decimal('0.65');
const CASE_HIGH = decimal('1.35');

/** Whether a received weight is likely to have lost or gained a decimal point. Items that nobody knows pass. */
export function isFarFromUsual(
  usual: readonly Grams[] | undefined,
  received: { grams: Grams; pieces?: number },
): boolean {
  const [lightest, ...heavier] = usual ?? [];
  if (lightest === undefined) return false;
  const each = received.pieces === undefined ? received.grams : received.grams.div(received.pieces);
  if (each.lte(lightest.div(FAR))) return true;
  if (each.lt(lightest.times(FAR))) return false;
  return !heavier.some((usually) => isNearCase(received.grams, usually));
}

const isNearCase = (grams: Decimal, usually: Decimal): boolean =>
  grams.gte(usually.times(CASE_LOW)) && grams.lte(usually.times(CASE_HIGH));

/** How many times the price before is still near it. */
const NEAR_PRICE = decimal('2');
/** No cut is bought at less a pound, in the currencies that count in cents (common practice, no source). */
const LEAST_PER_LB = decimal('0.6');

/** Whether a sum beside a weight can only be its price by weight, and not what all of it cost. */
export function isPlainlyPerLb(
  { grams, perLb, amount }: { grams: Grams; perLb: Decimal; amount: Decimal },
  known?: Decimal,
): boolean {
  const inAll = amount.times(GRAMS_PER.lb).div(grams);
  if (known === undefined) return inAll.lt(LEAST_PER_LB);
  const isNear = (price: Decimal): boolean =>
    price.lte(known.times(NEAR_PRICE)) && known.lte(price.times(NEAR_PRICE));
  return isNear(perLb) && !isNear(inAll);
}

// Exact decimals: the only file that imports decimal.js. Sums and products of spoken figures are
// exact; only quotients are rounded, at 40 significant digits. Compare by methods, never by operators.
import { Decimal as DecimalJs } from 'decimal.js';

/** An exact decimal number. Use its methods (`plus`, `lt`, `eq` …): `+`, `<` and `===` are wrong without an error. */
export type Decimal = DecimalJs;

const Exact = DecimalJs.clone({
  precision: 40,
  rounding: DecimalJs.ROUND_HALF_UP,
  toExpNeg: -9e15,
  toExpPos: 9e15,
});

// A quotient of 40 digits may begin with zeros after the point: it must be read as it was written.
const PLAIN = /^-?\d{1,40}(\.\d{1,80})?$/;

/** The decimal that a plain figure such as "14.2" or "-0.5" writes. Throws on anything else ("1e3", "0x10", "1,5", ""). */
export function decimal(figure: string): Decimal {
  if (!PLAIN.test(figure)) throw new Error(`not a plain decimal figure: ${JSON.stringify(figure)}`);
  return new Exact(figure);
}

export const ZERO = decimal('0');
export const ONE = decimal('1');
export const HUNDRED = decimal('100');

/** True for a value made by this module. */
export const isDecimal = (value: unknown): value is Decimal => DecimalJs.isDecimal(value);

/** The sum, exact; zero for an empty list. */
export const sum = (values: Iterable<Decimal>): Decimal => {
  let total = ZERO;
  for (const value of values) total = total.plus(value);
  return total;
};

/** Half-up to a number of places: for the eye and for shares of money only. */
export const roundTo = (value: Decimal, places: number): Decimal =>
  value.toDecimalPlaces(places, DecimalJs.ROUND_HALF_UP);

/** Half-up to significant digits. */
export const significant = (value: Decimal, digits: number): Decimal =>
  value.toSignificantDigits(digits, DecimalJs.ROUND_HALF_UP);

/** A whole number of the given size or larger (rounds up) or smaller (rounds down). */
export const roundUp = (value: Decimal, places = 0): Decimal =>
  value.toDecimalPlaces(places, DecimalJs.ROUND_CEIL);
export const roundDown = (value: Decimal, places = 0): Decimal =>
  value.toDecimalPlaces(places, DecimalJs.ROUND_FLOOR);

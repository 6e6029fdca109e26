// Fractions of whole numbers of any size: a second reckoning, apart from the program's decimals, in which nothing is rounded.
import type { Decimal } from '../../src/core/decimal.ts';

export interface Fraction {
  readonly over: bigint;
  /** Above 0. */
  readonly under: bigint;
}

const fraction = (over: bigint, under: bigint): Fraction =>
  under < 0n ? { over: -over, under: -under } : { over, under };

/** Of a plain figure, as it is written. */
export function exact(figure: string | number): Fraction {
  const [whole = '', places = ''] = `${figure}`.split('.');
  return { over: BigInt(whole + places), under: 10n ** BigInt(places.length) };
}

export const plus = (a: Fraction, b: Fraction): Fraction =>
  fraction(a.over * b.under + b.over * a.under, a.under * b.under);
export const minus = (a: Fraction, b: Fraction): Fraction => plus(a, { over: -b.over, under: b.under });
export const times = (a: Fraction, b: Fraction): Fraction => fraction(a.over * b.over, a.under * b.under);
export const over = (a: Fraction, b: Fraction): Fraction => fraction(a.over * b.under, a.under * b.over);
export const total = (all: readonly Fraction[]): Fraction => all.reduce(plus, { over: 0n, under: 1n });

/** The square root, cut off after 40 places. */
export function root({ over: square, under }: Fraction): Fraction {
  const scale = 10n ** 40n;
  return { over: wholeRoot((square * scale * scale) / under), under: scale };
}

/** Newton's method on whole numbers: from above, until it no longer falls. */
function wholeRoot(square: bigint): bigint {
  if (square < 2n) return square;
  let high = 1n << BigInt(Math.ceil(square.toString(2).length / 2));
  for (;;) {
    const next = (high + square / high) / 2n;
    if (next >= high) return high;
    high = next;
  }
}

/** To so many places, half up, as the decimals write it. */
export function written({ over: above, under }: Fraction, places: number): string {
  const scaled = (2n * (above < 0n ? -above : above) * 10n ** BigInt(places) + under) / (2n * under);
  const digits = scaled.toString().padStart(places + 1, '0');
  return `${above < 0n && scaled > 0n ? '-' : ''}${digits.slice(0, -places)}.${digits.slice(-places)}`;
}

/** Both to 15 places: far more than anybody is told. */
export const sameFigure = (figure: Decimal | undefined, expected: Fraction): readonly [string, string] => [
  figure?.toFixed(15) ?? 'none',
  written(expected, 15),
];

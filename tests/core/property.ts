// What the property tests draw: figures as a scale, a price list or a cook would give them.
import fc from 'fast-check';
import { decimal, type Decimal } from '../../src/core/decimal.ts';
import type { FactOf } from '../../src/core/facts.ts';
import { toGrams } from '../../src/core/quantity.ts';

export { fc };
export const d = decimal;

/** A figure above 0 with up to so many places. */
export const figure = (places: number, max = 10_000): fc.Arbitrary<Decimal> =>
  fc
    .integer({ min: 1, max: max * 10 ** Math.min(places, 4) })
    .map((units) => decimal(units.toString()).div(10 ** places));

export interface Cut {
  readonly received: FactOf<'received'>;
  readonly weighings: readonly FactOf<'weighed'>[];
  readonly portioned: FactOf<'portioned'>;
}

const partNames = ['purge', 'trim', 'fat', 'silverskin', 'lip', 'chain', 'bone'];

/**
 * A piece taken apart so that it balances: each part, the portions and the loss have a share of it, in hundredths of
 * an ounce. Some parts have a credit, unless there are to be none.
 */
export const cut = ({ credits }: { readonly credits: boolean }): fc.Arbitrary<Cut> =>
  fc
    .record({
      portions: fc.integer({ min: 1000, max: 100_000 }),
      loss: fc.integer({ min: 0, max: 500 }),
      parts: fc.uniqueArray(
        fc.record({
          part: fc.constantFrom(...partNames),
          weight: fc.integer({ min: 1, max: 20_000 }),
          creditPerLb: credits ? fc.option(figure(2, 9), { nil: undefined }) : fc.constant(undefined),
        }),
        { selector: ({ part }) => part },
      ),
      perLb: figure(2, 30),
      count: fc.integer({ min: 1, max: 60 }),
    })
    .map(({ portions, loss, parts, perLb, count }) => {
      const whole = parts.reduce((total, { weight }) => total + weight, portions + loss);
      return {
        received: { type: 'received', item: 'ribeye', grams: hundredths(whole), perLb },
        weighings: parts.map(({ part, weight, creditPerLb }) => ({
          type: 'weighed',
          part,
          grams: hundredths(weight),
          mode: 'set',
          creditPerLb,
        })),
        portioned: { type: 'portioned', mode: 'set', count, grams: hundredths(portions) },
      };
    });

const hundredths = (ounces: number): Decimal => toGrams(decimal(ounces.toString()).div(100), 'oz');

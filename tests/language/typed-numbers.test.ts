// Numbers as they are typed: any decimal comes back as it was written, in every unit; a comma is read by the rule that
// English price lists follow.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { KitchenUnit } from '../../src/core/quantity.ts';
import { judge } from './english.ts';
import { amountRead, same } from './heard.ts';

const GRAM_IN_LB = 1 / 453.59237;
const IN_LB = { lb: 1, oz: 1 / 16, kg: 1000 * GRAM_IN_LB, g: GRAM_IN_LB } as const;
type Unit = keyof typeof IN_LB;
/** What a floor scale could show at most, in each unit. */
const MOST = { lb: 1500, oz: 20_000, kg: 600, g: 600_000 } as const;

/** A figure above 0 with up to three places, as it would be typed. */
const typedFigure = (most: number): fc.Arbitrary<string> =>
  fc
    .tuple(fc.integer({ min: 1, max: most - 1 }), fc.integer({ min: 0, max: 3 }), fc.nat({ max: 999 }))
    .map(([whole, places, rest]) =>
      places === 0 ? `${whole}` : `${whole}.${String(rest).padStart(3, '0').slice(0, places)}`,
    );

const unitAndFigure = fc
  .constantFrom<Unit>('lb', 'oz', 'kg', 'g')
  .chain((unit) => fc.tuple(fc.constant(unit), typedFigure(MOST[unit])));

interface In {
  readonly scale?: number;
  readonly unit?: KitchenUnit;
}

const expectWeight = (line: string, amount: number, spoken: In = {}): void => {
  const read = amountRead(line, { kind: 'weigh', slot: 'weightLb', ...spoken });
  expect(same(read, amount), `"${line}" should be ${amount}, read ${read}`).toBe(true);
};

test('a weight comes back in the unit that it was typed in, with and without a space', () => {
  fc.assert(
    fc.property(unitAndFigure, ([unit, figure]) => {
      expectWeight(`trim ${figure} ${unit}`, Number(figure), { scale: IN_LB[unit] });
      expectWeight(`${figure}${unit} trim`, Number(figure), { scale: IN_LB[unit] });
    }),
    { numRuns: 1000 },
  );
});

test('a bare weight is in the unit of the kitchen', () => {
  fc.assert(
    fc.property(typedFigure(500), (figure) => {
      expectWeight(`trim ${figure}`, Number(figure));
      expectWeight(`trim ${figure}`, Number(figure), { scale: IN_LB.kg, unit: 'kg' });
    }),
    { numRuns: 500 },
  );
});

test('a weight in pounds is given back digit by digit, without a rounding', () => {
  fc.assert(
    fc.property(typedFigure(1500), (figure) => {
      const [entry] = judge(`trim ${figure} lb`).entries as readonly { weightLb: string }[];
      const shortest = figure.includes('.') ? figure.replace(/0+$/, '').replace(/\.$/, '') : figure;
      expect(entry?.weightLb).toBe(shortest);
    }),
    { numRuns: 500 },
  );
});

test('a price comes back as it was typed, with its sign and its unit', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 49_999 }), (cents) => {
      const price = (cents / 100).toFixed(2);
      for (const written of [
        price,
        `$${price}`,
        `$${price}/lb`,
        `${price} a pound`,
        `${price} dollars per pound`,
      ]) {
        const read = amountRead(`ready cut ${written}`, { kind: 'readyCut', slot: 'pricePerLb' });
        expect(read, written).toBe(cents / 100);
      }
    }),
    { numRuns: 300 },
  );
});

describe('a comma between digits', () => {
  const grams = { scale: GRAM_IN_LB };

  test.each([
    ['1,1', 1.1],
    ['0,5', 0.5],
    ['1,15', 1.15],
    ['12,3', 12.3],
    ['123,45', 123.45],
  ])('is a decimal mark before one or two digits: %s', (figure, amount) => {
    expectWeight(`trim ${figure} lb`, amount);
  });

  test.each([
    ['1,234', 1234],
    ['12,345', 12_345],
    ['123,456', 123_456],
    ['1,234.5', 1234.5],
  ])('groups thousands before exactly three digits: %s', (figure, amount) => {
    expectWeight(`trim ${figure} g`, amount, grams);
  });

  test.each([
    ['16,15,16', ['16', '15', '16']],
    ['16.2,15.9,16.4', ['16.2', '15.9', '16.4']],
  ])('separates where it is not the only one: steaks %s', (list, eachOz) => {
    expect(judge(`steaks ${list}`).entries).toEqual([{ kind: 'portionWeights', eachOz }]);
  });

  test('makes no list of two where it is the only one: steaks 16,15', () => {
    expect(judge('steaks 16,15').entries).not.toContainEqual({
      kind: 'portionWeights',
      eachOz: ['16', '15'],
    });
  });

  test.each(['1,2345', '1234,567', '1,23,4567', '0,500', '1.2.3', '1,234,5', '1.234,5', '12345,678.9'])(
    'is not guessed in %s',
    (figure) => {
      const { entries, ask } = judge(`trim ${figure} lb`);
      expect(entries).toEqual([]);
      expect(ask).not.toBeNull();
    },
  );
});

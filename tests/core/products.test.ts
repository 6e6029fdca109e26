// One piece, several products: by value and by the residual method the same money is carried.
import { expect, test } from 'vitest';
import { sum } from '../../src/core/decimal.ts';
import type { Fact } from '../../src/core/facts.ts';
import { figures } from '../../src/core/figures.ts';
import { costOf } from '../../src/core/money.ts';
import { type ByValue, shareByValue } from '../../src/core/products.ts';
import { AVOIDABLE, d, lb, portioned, received, shown, testOf, weighed } from './given.ts';
import { fc, figure } from './property.ts';

const sold = (part: string) => ({ type: 'sold', part }) as const;

function shared(readyCut: string | undefined, ...facts: readonly Fact[]): ByValue | string {
  const test = testOf(...facts);
  return shareByValue(test, figures(test, AVOIDABLE), readyCut === undefined ? undefined : d(readyCut));
}

const loin = fc.record({
  price: figure(2, 20),
  strip: figure(2, 9),
  tender: figure(2, 9),
  strips: figure(2, 30),
  tenders: figure(2, 30),
});

test('the shares of a short loin add up to its cost less what the trim is worth', () => {
  fc.assert(
    fc.property(loin, ({ price, strip, tender, strips, tenders }) => {
      const found = shared(
        undefined,
        received('40', price.toString(), 'short loin'),
        weighed('striploin', strip.toString(), strips.toString()),
        weighed('tenderloin', tender.toString(), tenders.toString()),
        weighed('trim', '0.01', '0.01'),
        sold('striploin'),
        sold('tenderloin'),
      );
      if (typeof found === 'string') throw new Error(found);
      const joint = costOf(lb('40'), price).minus(costOf(lb('0.01'), d('0.01')));
      expect(sum(found.products.map(({ share }) => share)).toString()).toBe(
        joint.toDecimalPlaces(2, 4).toString(),
      );
    }),
  );
});

// 10 lb at 6.00 are 60.00. By value: 4 lb at 12 and 4 lb at 8, 48 to 32: 36.00 and 24.00.
test('the portions are a product too, at the ready-cut price', () => {
  const facts = [
    received('10', '6'),
    weighed('cap', '4', '8'),
    sold('cap'),
    portioned({ count: 4, grams: lb('4') }),
  ];
  const found = shared('12', ...facts);
  if (typeof found === 'string') throw new Error(found);
  expect(
    found.products.map(({ part, share, usableCostPerLb, costFactor }) => [
      part,
      shown(share),
      shown(usableCostPerLb),
      shown(costFactor),
    ]),
  ).toEqual([
    ['cap', '24', '6', '1'],
    ['portions', '36', '9', '1.5'],
  ]);
});

test.each([
  [
    'price',
    '12',
    [received('10'), weighed('cap', '4', '8'), sold('cap'), portioned({ count: 4, grams: lb('4') })],
  ],
  [
    'products',
    '12',
    [received('10', '6'), weighed('cap', '4', '8'), portioned({ count: 4, grams: lb('4') })],
  ],
  ['products', undefined, [received('10', '6'), weighed('cap', '4', '8'), sold('cap')]],
  [
    'value',
    undefined,
    [received('10', '6'), weighed('cap', '4', '8'), sold('cap'), portioned({ count: 4, grams: lb('4') })],
  ],
  [
    'value',
    '12',
    [received('10', '6'), weighed('cap', '4'), sold('cap'), portioned({ count: 4, grams: lb('4') })],
  ],
  [
    'balance',
    '12',
    [received('10', '6'), weighed('cap', '7', '8'), sold('cap'), portioned({ count: 4, grams: lb('4') })],
  ],
] as const)('is not shared for want of %s', (gap, readyCut, facts) => {
  expect(shared(readyCut, ...facts)).toBe(gap);
});

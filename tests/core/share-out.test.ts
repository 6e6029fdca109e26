// Money shared out: no cent is lost, none is made, and nobody is off by a whole one.
import { expect, test } from 'vitest';
import { sum } from '../../src/core/decimal.ts';
import { shareOut } from '../../src/core/share-out.ts';
import { d, shown } from './given.ts';
import { fc, figure } from './property.ts';

test('a dollar in three equal shares is 0.34, 0.33, 0.33', () => {
  const shares = shareOut(d('1'), [d('1'), d('1'), d('1')]);
  expect(shares.map((each) => shown(each))).toEqual(['0.34', '0.33', '0.33']);
});

test('a share without weight is nothing', () => {
  expect(shareOut(d('0.01'), [d('0'), d('5')]).map((each) => shown(each))).toEqual(['0', '0.01']);
});

test('the shares add up to the sum, and each is within a cent of its exact part', () => {
  fc.assert(
    fc.property(
      figure(2, 5000),
      fc.array(figure(3, 900), { minLength: 1, maxLength: 12 }),
      (total, weights) => {
        const shares = shareOut(total, weights);
        expect(sum(shares).toString()).toBe(total.toDecimalPlaces(2, 4).toString());
        const whole = sum(weights);
        const exact = (at: number) => total.times(weights[at] ?? 0).div(whole);
        expect(
          shares.every((each, at) => each.decimalPlaces() <= 2 && each.minus(exact(at)).abs().lt('0.01')),
        ).toBe(true);
      },
    ),
  );
});

test('of two shares the heavier never has less', () => {
  fc.assert(
    fc.property(
      figure(2, 500),
      fc.array(figure(3, 900), { minLength: 2, maxLength: 8 }),
      (total, weights) => {
        const shares = shareOut(total, weights);
        const sorted = weights
          .map((weight, at) => ({ weight, share: shares[at] ?? d('0') }))
          .sort((a, b) => a.weight.comparedTo(b.weight));
        expect(
          sorted.every(
            ({ weight, share }, at) =>
              at === 0 || !weight.gt(sorted[at - 1]?.weight ?? 0) || share.gte(sorted[at - 1]?.share ?? 0),
          ),
        ).toBe(true);
      },
    ),
  );
});

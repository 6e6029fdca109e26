import { expect, test } from 'vitest';
import { roundUp } from '../../src/core/decimal.ts';
import { gramsToBuy, menuPrice, portionsFrom } from '../../src/core/order.ts';
import { fromGrams } from '../../src/core/quantity.ts';
import { d, lb, oz, shown } from './given.ts';

test('11.3 lb give twelve portions of 14 oz, not thirteen', () => {
  expect(portionsFrom(lb('11.3'), oz('14'))).toBe(12);
});

test('a weight that goes up evenly gives every portion', () => {
  expect(portionsFrom(lb('10.5'), oz('14'))).toBe(12);
});

test('10 lb of portions at a yield of one third are 30 lb, not 30.1', () => {
  const grams = gramsToBuy({ count: 10, eachGrams: lb('1'), receivedGrams: lb('3'), portionGrams: lb('1') });
  expect(roundUp(fromGrams(grams, 'lb'), 1).toString()).toBe('30');
});

test('a portion of 4.80 at a food cost of 32 % sells for 15.00', () => {
  expect(shown(menuPrice(d('4.80'), d('32')))).toBe('15');
});

import { expect, test } from 'vitest';
import { costOf, perLbFrom, perLbOf, perUnit } from '../../src/core/money.ts';
import type { WeightUnit } from '../../src/core/quantity.ts';
import { lb } from './given.ts';
import { d, fc, figure } from './property.ts';

test('14.2 lb at 7.40 cost 105.08', () => {
  expect(costOf(lb('14.2'), d('7.40')).toString()).toBe('105.08');
});

test('28.6 lb for 211.64 all in are 7.40 a pound', () => {
  expect(perLbOf(d('211.64'), lb('28.6')).toString()).toBe('7.4');
});

test('a price per kilogram is 2.2046226218 times the price per pound (NIST Handbook 44)', () => {
  expect(perUnit(d('1'), 'kg').toFixed(10)).toBe('2.2046226218');
  expect(perLbFrom(d('11.95'), 'kg').toString()).toBe('5.4204288215');
});

test('a price per ounce is a sixteenth of the price per pound', () => {
  expect(perUnit(d('8'), 'oz').toString()).toBe('0.5');
  expect(perLbFrom(d('0.5'), 'oz').toString()).toBe('8');
});

test('a price in any unit comes back as it was said', () => {
  fc.assert(
    fc.property(figure(2), fc.constantFrom<WeightUnit[]>('lb', 'oz', 'kg', 'g'), (price, unit) => {
      expect(perUnit(perLbFrom(price, unit), unit).toFixed(30)).toBe(price.toFixed(30));
    }),
  );
});

import { describe, expect, test } from 'vitest';
import { fromGrams, portionUnit, toGrams, type WeightUnit } from '../../src/core/quantity.ts';
import { d, fc, figure } from './property.ts';

describe('units (NIST Handbook 44, appendix C: exact)', () => {
  test.each([
    ['1', 'lb', '453.59237'],
    ['1', 'oz', '28.349523125'],
    ['16', 'oz', '453.59237'],
    ['0.1', 'lb', '45.359237'],
    ['1', 'kg', '1000'],
    ['750', 'g', '750'],
  ] as const)('%s %s is %s g', (amount, unit, grams) => {
    expect(toGrams(d(amount), unit).toString()).toBe(grams);
  });

  test('3 lb 5 oz is 3.3125 lb, not 3.5', () => {
    expect(fromGrams(toGrams(d('3'), 'lb').plus(toGrams(d('5'), 'oz')), 'lb').toString()).toBe('3.3125');
  });

  test('a kilogram is 2.2046226218 lb', () => {
    expect(fromGrams(d('1000'), 'lb').toFixed(10)).toBe('2.2046226218');
  });

  test('every spoken weight comes back exactly as it was said, in its unit', () => {
    fc.assert(
      fc.property(figure(4), fc.constantFrom<WeightUnit[]>('lb', 'oz', 'kg', 'g'), (amount, unit) => {
        expect(fromGrams(toGrams(amount, unit), unit).eq(amount)).toBe(true);
      }),
    );
  });
});

test('portions are spoken in ounces beside pounds, in grams beside kilograms', () => {
  expect(portionUnit('lb')).toBe('oz');
  expect(portionUnit('kg')).toBe('g');
});

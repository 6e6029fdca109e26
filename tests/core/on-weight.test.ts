// Portions against their size: capability by the published example, tolerance by its steps, and what must always hold.
import { describe, expect, test } from 'vitest';
import { capability, onWeight, toleranceOf } from '../../src/core/on-weight.ts';
import { d, oz, shown } from './given.ts';
import { fc, figure } from './property.ts';

// NIST/SEMATECH e-Handbook of Statistical Methods, 6.1.6: USL 20, LSL 8, mean 16, s 2.
test('Cp is 1.0 and Cpk 0.6667 in the example of the e-Handbook', () => {
  const { cp, cpk } = capability(
    { low: d('8'), high: d('20') },
    { meanGrams: d('16'), deviationGrams: d('2') },
  );
  expect([shown(cp, 4), shown(cpk, 4)]).toEqual(['1', '0.6667']);
});

test('portions that are all alike have no Cp: nothing is divided by 0', () => {
  const { cp, cpk, deviationGrams } = onWeight([oz('12'), oz('12')], oz('12'), oz('0.5'));
  expect([shown(deviationGrams), cp, cpk]).toEqual(['0', undefined, undefined]);
});

test('one portion has no spread', () => {
  expect(onWeight([oz('12.1')], oz('12'), oz('0.5')).deviationGrams).toBeUndefined();
});

describe('the tolerance', () => {
  test.each([
    ['5.9', '0.25'],
    ['6', '0.5'],
    ['11.9', '0.5'],
    ['12', '0.75'],
    ['18', '1'],
  ])('of %s oz is %s oz where the kitchen has not said', (size, expected) => {
    expect(toleranceOf(oz(size), undefined).eq(oz(expected))).toBe(true);
  });

  test("is the kitchen's own where it has", () => {
    expect(toleranceOf(oz('16'), oz('0.3')).eq(oz('0.3'))).toBe(true);
  });

  test('holds at its very edge', () => {
    const { under, over } = onWeight([oz('11.5'), oz('12.5')], oz('12'), oz('0.5'));
    expect([under, over]).toEqual([0, 0]);
  });
});

test('a light portion never makes up for a heavy one', () => {
  fc.assert(
    fc.property(fc.array(figure(2, 40), { minLength: 1, maxLength: 30 }), figure(2, 40), (list, target) => {
      const found = onWeight(list, target, d('0.5'));
      const signed = list.reduce((total, each) => total.plus(each.minus(target)), d('0'));
      expect(found.overGrams.gte(signed)).toBe(true);
      expect(found.overGrams.isNegative()).toBe(false);
      expect(found.under + found.over).toBeLessThanOrEqual(list.length);
    }),
  );
});

test('the nearer limit never gives more than both together', () => {
  fc.assert(
    fc.property(fc.array(figure(2, 40), { minLength: 2, maxLength: 30 }), figure(2, 40), (list, target) => {
      const { cp, cpk } = onWeight(list, target, d('0.5'));
      if (cp !== undefined && cpk !== undefined) expect(cpk.lte(cp.plus('1e-30'))).toBe(true);
    }),
  );
});

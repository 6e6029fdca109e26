// Data that is written as JSON comes back as it was: exact, and with any name.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decimal, isDecimal } from '../../src/core/decimal.ts';
import { fromPlainJson, toPlainJson } from '../../src/core/plain-json.ts';

const there = (value: unknown): unknown => fromPlainJson(toPlainJson(value));

describe('decimals', () => {
  it.each([
    '0', '-0.5', '14.2', '0.1', '6440.1234567890123456789012345678901', '1234567890123456789012345678901234567890',
    '0.0000000000000000000000000000000000000001',
  ])('come back exact: %s', (figure) => {
    const back = there([decimal(figure)]) as unknown[];
    expect(isDecimal(back[0]) && back[0].toFixed()).toBe(figure);
  }); // prettier-ignore

  it('come back exact where a quotient is below one, with all its digits', () => {
    const quotient = decimal('1').div(decimal('2100'));
    const back = there(quotient);
    expect(isDecimal(back) && back.eq(quotient)).toBe(true);
  });

  it('are never a number of the JSON', () => {
    expect(toPlainJson({ grams: decimal('12.30') })).toBe('{"grams":{"$d":"12.3"}}');
  });

  it('that are no finite number are refused', () => {
    expect(() => toPlainJson(decimal('1').div(decimal('0')))).toThrow('finite');
  });
});

describe('names', () => {
  it.each(['__proto__', 'constructor', 'toString', '$d', '$$d', '$', ''])(
    'come back as own names: %j',
    (name) => {
      const value = Object.fromEntries([[name, { [name]: decimal('1.1'), other: 'text' }]]);
      const back = there(value) as Record<string, object>;
      expect(Object.keys(back)).toEqual([name]);
      expect(Object.keys(back[name] ?? {})).toEqual([name, 'other']);
      expect(Object.getPrototypeOf(back)).toBe(Object.prototype);
      expect(back).toEqual(value);
    },
  );

  it('that look like the mark of a decimal stay text', () => {
    expect(there({ $d: '1.1' })).toEqual({ $d: '1.1' });
    expect(there({ $d: { $d: '1.1' } })).toEqual({ $d: { $d: '1.1' } });
  });
});

it('gives back any plain data', () => {
  const figure = fc.bigInt({ min: -(10n ** 30n), max: 10n ** 30n }).map((whole) => decimal(String(whole)));
  const data = fc.letrec((tie) => ({
    any: fc.oneof(figure, fc.string({ unit: 'grapheme' }), fc.integer(), fc.boolean(), fc.constant(null), tie('list'), tie('record')),
    list: fc.array(tie('any'), { maxLength: 4 }),
    record: fc.dictionary(fc.string(), tie('any'), { maxKeys: 4, noNullPrototype: true }),
  })).any; // prettier-ignore
  fc.assert(fc.property(data, (value) => { expect(there(value)).toEqual(value); })); // prettier-ignore
});

it.each([
  ['a map', new Map([['a', 1]])],
  ['a date', new Date(0)],
  ['a function', () => 1],
  ['a big integer', 1n],
  ['not a number', NaN],
  ['infinity', -Infinity],
])('refuses what would not come back: %s', (_, value) => {
  expect(() => toPlainJson({ deep: [value] })).toThrow('not plain data');
});

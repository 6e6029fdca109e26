import { fc } from './property.ts';
import { describe, expect, test } from 'vitest';
import { decimal, roundDown, roundTo, roundUp, significant, sum } from '../../src/core/decimal.ts';

describe('a plain figure', () => {
  test.each([
    ['14.2', '14.2'],
    ['-0.5', '-0.5'],
    ['0', '0'],
    ['007', '7'],
    ['1234567890.01234567890123456789', '1234567890.01234567890123456789'],
  ])('%s is read as %s', (figure, expected) => {
    expect(decimal(figure).toString()).toBe(expected);
  });

  test.each([
    '',
    ' ',
    '1e3',
    '0x10',
    '1,5',
    '1.',
    '.5',
    '+1',
    '--1',
    'NaN',
    'Infinity',
    '1 2',
    '１',
    '1'.repeat(41),
  ])('%j is refused', (figure) => {
    expect(() => decimal(figure)).toThrow('not a plain decimal figure');
  });

  test('what is written is read again, to the last digit, a small quotient too', () => {
    const seventh = decimal('0.0001').div(7);
    expect(decimal(seventh.toString()).eq(seventh)).toBe(true);
  });
});

describe('exact arithmetic', () => {
  test('three times a tenth is three tenths', () => {
    expect(sum([decimal('0.1'), decimal('0.1'), decimal('0.1')]).eq(decimal('0.3'))).toBe(true);
  });

  test('nothing adds up to zero', () => {
    expect(sum([]).isZero()).toBe(true);
  });

  test('a large and a small figure never swap into powers of ten', () => {
    expect(decimal('100000000000000000000000000').toString()).toBe('100000000000000000000000000');
    expect(decimal('0.00000000000000000001').toString()).toBe('0.00000000000000000001');
  });

  test('sums of cents agree with whole numbers, in any order', () => {
    fc.assert(
      fc.property(fc.array(fc.bigInt({ min: -(10n ** 12n), max: 10n ** 12n })), (cents) => {
        const money = cents.map((each) => decimal(each.toString()).div(100));
        const total = cents.reduce((one, other) => one + other, 0n).toString();
        expect(sum(money).times(100).toString()).toBe(total);
        expect(sum(money.reverse()).times(100).toString()).toBe(total);
      }),
    );
  });
});

describe('rounding is half-up, away from zero', () => {
  test.each([
    ['6.785', 2, '6.79'],
    ['6.7849999', 2, '6.78'],
    ['2.5', 0, '3'],
    ['-2.5', 0, '-3'],
    ['1.005', 2, '1.01'],
  ])('%s to %i places is %s', (figure, places, expected) => {
    expect(roundTo(decimal(figure), places).toString()).toBe(expected);
  });

  test('to significant digits', () => {
    expect(significant(decimal('12.498824'), 6).toString()).toBe('12.4988');
  });

  test.each([
    ['25.3165', '25.4', '25.3'],
    ['25.3', '25.3', '25.3'],
    ['25.30000001', '25.4', '25.3'],
  ])('%s to a tenth is %s up and %s down', (figure, up, down) => {
    expect(roundUp(decimal(figure), 1).toString()).toBe(up);
    expect(roundDown(decimal(figure), 1).toString()).toBe(down);
  });
});

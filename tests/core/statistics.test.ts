// Mean, standard deviation and Student's t against certified and published values.
import jstat from 'jstat';
import { describe, expect, test } from 'vitest';
import type { Decimal } from '../../src/core/decimal.ts';
import { deviationOf, mean, sampleDeviation, tQuantile90, tQuantile95 } from '../../src/core/statistics.ts';
import { d, fc, figure } from './property.ts';

/** NIST's lower and higher accuracy sets: one value, then 500 times two others around it. */
const around = (middle: string, low: string, high: string): readonly string[] => [
  middle,
  ...Array.from({ length: 500 }, () => [low, high]).flat(),
];

// The speed of light by Michelson, 1879, in km/s less 299,000 (NIST's data set Michelso, in
// units of 1,000 km/s). The hundred values are from memory; that they give the certified figures confirms them.
const michelson = [
  850, 740, 900, 1070, 930, 850, 950, 980, 980, 880, 1000, 980, 930, 650, 760, 810, 1000, 1000, 960, 960,
  960, 940, 960, 940, 880, 800, 850, 880, 900, 840, 830, 790, 810, 880, 880, 830, 800, 790, 760, 800,
  880, 880, 880, 860, 720, 720, 620, 860, 970, 950, 880, 910, 850, 870, 840, 840, 850, 840, 840, 840,
  890, 810, 810, 820, 800, 770, 760, 740, 750, 760, 910, 920, 890, 860, 880, 720, 840, 850, 850, 780,
  890, 840, 780, 810, 760, 810, 790, 810, 820, 850, 870, 870, 810, 740, 810, 940, 950, 800, 810, 870,
].map((value) => `299.${value >= 1000 ? 'x' : ''}${value}`.replace('299.x1', '300.')); // prettier-ignore

const minced = ['496.1', '501.7', '494.3', '475.9', '511.2', '502.4', '492.5', '500.6', '489.5', '465.7'];

const certified = [
  ['NIST StRD NumAcc1', ['10000001', '10000003', '10000002'], '10000002', '1'],
  ['NIST StRD NumAcc2', around('1.2', '1.1', '1.3'), '1.2', '0.1'],
  ['NIST StRD NumAcc3', around('1000000.2', '1000000.1', '1000000.3'), '1000000.2', '0.1'],
  ['NIST StRD NumAcc4', around('10000000.2', '10000000.1', '10000000.3'), '10000000.2', '0.1'],
  ['NIST StRD Michelso', michelson, '299.8524', '0.0790105478190518'],
  ['R package isdals, mincedmeat', minced, '492.99', '13.393817'],
] as const;

const places = (figure: string): number => figure.split('.')[1]?.length ?? 0;
const sameTo = (expected: string, value: Decimal | undefined): void => {
  expect(value?.toFixed(places(expected))).toBe(expected);
};

describe.each(certified)('%s', (_, figures, expectedMean, expectedDeviation) => {
  const values = figures.map(d);

  test(`has the mean ${expectedMean}, exactly`, () => {
    expect(mean(values)?.toString()).toBe(expectedMean);
  });

  test(`has the standard deviation ${expectedDeviation}`, () => {
    sameTo(expectedDeviation, sampleDeviation(values));
  });

  test('has it from the sums alone too', () => {
    const total = values.reduce((one, other) => one.plus(other));
    const squares = values.reduce((sum, value) => sum.plus(value.times(value)), d('0'));
    sameTo(expectedDeviation, deviationOf({ count: values.length, total, squares }));
  });
});

describe('few values', () => {
  test('none have no mean', () => {
    expect(mean([])).toBeUndefined();
  });

  test('one has a mean and no spread', () => {
    expect(mean([d('78.9')])?.toString()).toBe('78.9');
    expect(sampleDeviation([d('78.9')])).toBeUndefined();
    expect(deviationOf({ count: 1, total: d('78.9'), squares: d('6225.21') })).toBeUndefined();
  });

  test('equal ones have the spread 0, by either way', () => {
    fc.assert(
      fc.property(figure(4), fc.integer({ min: 2, max: 20 }), (value, count) => {
        expect(sampleDeviation(Array.from({ length: count }, () => value))?.toString()).toBe('0');
        const sums = { count, total: value.times(count), squares: value.times(value).times(count) };
        expect(deviationOf(sums)?.toString()).toBe('0');
      }),
    );
  });
});

describe("Student's t at 0.90", () => {
  // Printed tables, one-sided 90 %.
  test.each([
    [1, '3.0777'],
    [2, '1.8856'],
    [3, '1.6377'],
    [4, '1.5332'],
    [5, '1.4759'],
    [9, '1.3830'],
    [30, '1.3104'],
  ])('for %i degrees of freedom is %s', (degrees, expected) => {
    sameTo(expected, tQuantile90(degrees));
  });

  test('agrees with an independent library for 1 to 500 degrees of freedom', () => {
    const apart = Array.from({ length: 500 }, (_, index) => index + 1).filter(
      (degrees) => Math.abs(tQuantile90(degrees).toNumber() - jstat.studentt.inv(0.9, degrees)) > 1e-7,
    );
    expect(apart).toEqual([]);
  });
});

describe("Student's t at 0.95", () => {
  // Printed tables, two-sided 90 %.
  test.each([
    [1, '6.3138'],
    [2, '2.9200'],
    [3, '2.3534'],
    [4, '2.1318'],
    [5, '2.0150'],
    [9, '1.8331'],
    [30, '1.6973'],
  ])('for %i degrees of freedom is %s', (degrees, expected) => {
    sameTo(expected, tQuantile95(degrees));
  });

  test('agrees with an independent library for 1 to 500 degrees of freedom', () => {
    const apart = Array.from({ length: 500 }, (_, index) => index + 1).filter(
      (degrees) => Math.abs(tQuantile95(degrees).toNumber() - jstat.studentt.inv(0.95, degrees)) > 1e-7,
    );
    expect(apart).toEqual([]);
  });

  test('falls with every degree of freedom, across the end of the table too', () => {
    const values = Array.from({ length: 100 }, (_, index) => tQuantile95(index + 1));
    expect(values.every((value, index) => index === 0 || value.lt(values[index - 1] ?? value))).toBe(true);
  });

  test('comes down to the normal 1.644854 for very many', () => {
    sameTo('1.644854', tQuantile95(100_000_000));
  });

  test.each([0, -1, 1.5])('does not exist for %d', (degrees) => {
    expect(() => tQuantile95(degrees)).toThrow('degrees of freedom');
  });
});

// Published temperatures, written here once more from their sources, and how a reading is judged.
import { describe, expect, test } from 'vitest';
import { decimal } from '../../src/core/decimal.ts';
import * as heat from '../../src/core/heat.ts';

test.each([
  ['ground meat, 17 s: Food Code 3-401.11(A)(2)', heat.GROUND_CODE_F, '155'],
  ['ground meat: USDA FSIS safe minimum internal temperatures', heat.GROUND_FSIS_F, '160'],
  ['ground trim cut in house: common practice', heat.GROUND_HOUSE_F, '165'],
  ['poultry: Food Code 3-401.11(A)(3), USDA FSIS', heat.POULTRY_F, '165'],
  [
    'whole steaks, chops, roasts: USDA FSIS with 3 min rest, Food Code 3-401.11(A)(1) for 15 s',
    heat.WHOLE_F,
    '145',
  ],
  ['cold holding: Food Code 3-501.16', heat.COLD_F, '41'],
  ['hot holding: Food Code 3-501.16', heat.HOT_F, '135'],
  ['cooling, first step: Food Code 3-501.14(A)', heat.SEVENTY_F, '70'],
  ['ice point: USDA FSIS', heat.CHECK_POINTS.ice, '32'],
  ['tolerance of the ice point: USDA FSIS', heat.CHECK_TOLERANCE_F, '2'],
])('%s', (_, value, published) => {
  expect(value.toString()).toBe(published);
});

test.each([
  ['74', '165.2'],
  ['5', '41'],
  ['71.1', '159.98'],
  ['-2', '28.4'],
])('%s °C is %s °F, exactly', (celsius, fahrenheit) => {
  expect(heat.toF(decimal(celsius), 'C').toString()).toBe(fahrenheit);
});

describe('a reading at its limit', () => {
  test.each([
    ['165', '165', 'lb', true],
    ['164.9', '165', 'lb', false],
    ['159.98', '160', 'lb', false],
    // FSIS prints 71.1 °C for 160 °F.
    ['159.98', '160', 'kg', true],
    ['159.8', '160', 'kg', false],
  ] as const)('%s °F against %s in a kitchen of %s', (reading, limit, unit, kept) => {
    expect(heat.isAtLeast(decimal(reading), decimal(limit), unit)).toBe(kept);
  });

  test('of cold holding', () => {
    expect(heat.isAtMost(decimal('41'), heat.COLD_F, 'lb')).toBe(true);
    expect(heat.isAtMost(decimal('41.1'), heat.COLD_F, 'lb')).toBe(false);
  });
});

test.each([
  ['ground', undefined, '165'],
  ['ground', '160', '160'],
  ['needled', undefined, '165'],
  ['needled', '160', '160'],
  ['poultry', '160', '165'],
  ['whole', '160', '145'],
] as const)('%s is cooked to its own limit, with the kitchen at %s', (food, own, limit) => {
  expect(heat.cookLimit(food, own === undefined ? undefined : decimal(own))?.toString()).toBe(limit);
});

test.each([
  ['154.9', false],
  ['155', true],
  ['212', true],
  ['213', false],
] as const)('a kitchen may set %s °F: %s', (degrees, may) => {
  expect(heat.mayBeGroundLimit(decimal(degrees))).toBe(may);
});

test.each([
  ['raw', '45', 'raw'],
  ['raw', '100', undefined],
  ['trim', '150', 'cook'],
  ['ground', '158', 'cook'],
  ['ground', '38', undefined],
  ['whole', '130', 'cook'],
  ['cooked', '68', 'held'],
] as const)('%s at %s °F is %s', (food, degrees, stage) => {
  expect(heat.stageOf(food, decimal(degrees))).toBe(stage);
});

// What a cutting test comes to, case by case. Whole worked examples are in worked-examples.yaml and docs/calculations.md.
import { describe, expect, test } from 'vitest';
import { fromGrams, type Grams } from '../../src/core/quantity.ts';
import { d, figuresOf, lb, oz, portioned, received, shown, weighed } from './given.ts';

const inLb = (grams: Grams | undefined) => shown(grams && fromGrams(grams, 'lb'));
const inOz = (grams: Grams | undefined) => shown(grams && fromGrams(grams, 'oz'));

describe('a ribeye of 14.2 lb at 7.40, trim 1.1, fat 1.9', () => {
  const upToFat = [received('14.2', '7.40'), weighed('trim', '1.1'), weighed('fat', '1.9')];

  test('has no costs before the portions are known, and 11.2 lb to go', () => {
    const found = figuresOf(...upToFat);
    expect(found.costs).toBeUndefined();
    expect(found.portions).toBeUndefined();
    expect(inLb(found.unaccountedGrams)).toBe('11.2');
    expect(shown(found.purchaseCost)).toBe('105.08');
  });

  test('does not balance with 12 portions of 16 oz: provisional costs for the 11.2 lb that are left', () => {
    const found = figuresOf(...upToFat, portioned({ count: 12, eachGrams: oz('16') }));
    expect(found.overweight).toBe(true);
    expect(inLb(found.unaccountedGrams)).toBe('-0.8');
    expect(found.costs).toBeUndefined();
    expect(inLb(found.provisional?.portionGrams)).toBe('11.2');
    expect(shown(found.provisional?.costs.usableCostPerLb)).toBe('9.382143');
    expect(shown(found.provisional?.costs.portionCost)).toBe('9.382143');
  });

  test('balances when the portions weigh 11.2 lb: 78.87 %, 9.38 a pound', () => {
    const found = figuresOf(...upToFat, portioned({ count: 12, eachGrams: oz('16'), grams: lb('11.2') }));
    expect(found.overweight).toBe(false);
    expect(found.provisional).toBeUndefined();
    expect(shown(found.portions?.yieldPct)).toBe('78.873239');
    expect(shown(found.costs?.usableCostPerLb)).toBe('9.382143');
    expect(inOz(found.portions?.meanGrams)).toBe('14.933333');
  });
});

describe('by-product or waste', () => {
  test.each([
    ['no credit', undefined, 'waste', '0'],
    ['a credit of 0', '0', 'waste', '0'],
    ['a credit of 1.50', '1.50', 'byproduct', '3'],
  ])('a part with %s', (_, creditPerLb, role, value) => {
    const [part] = figuresOf(received('10'), weighed('trim', '2', creditPerLb)).parts;
    expect(part?.role).toBe(role);
    expect(shown(part?.value)).toBe(value);
  });

  test('a credit said after the weight counts', () => {
    const found = figuresOf(received('10'), weighed('trim', '2'), {
      type: 'credited',
      item: 'ribeye',
      part: 'trim',
      perLb: d('1.50'),
    });
    expect(shown(found.creditTotal)).toBe('3');
  });

  test('a part that happens to be called as something every object has is worth nothing', () => {
    const [part] = figuresOf(received('10'), weighed('constructor', '2')).parts;
    expect(part?.role).toBe('waste');
    expect(part?.creditPerLb).toBeUndefined();
  });
});

describe('the tolerance of 0.05 lb', () => {
  test.each([
    ['10', false],
    ['10.05', false],
    ['10.0500001', true],
    ['10.06', true],
  ])('of a 10 lb piece %s lb weighed back is overweight: %s', (pounds, overweight) => {
    expect(figuresOf(received('10', '5'), portioned({ grams: lb(pounds) })).overweight).toBe(overweight);
  });

  test('parts alone can be too heavy; then nothing is left to give provisional costs for', () => {
    const found = figuresOf(
      received('10', '5'),
      weighed('trim', '6'),
      weighed('fat', '6'),
      portioned({ grams: lb('1') }),
    );
    expect(found.overweight).toBe(true);
    expect(found.costs).toBeUndefined();
    expect(found.provisional).toBeUndefined();
  });

  test('parts that are the whole piece leave nothing for the portions either', () => {
    const found = figuresOf(received('10', '5'), weighed('fat', '10'), portioned({ grams: lb('1') }));
    expect(found.overweight).toBe(true);
    expect(found.provisional).toBeUndefined();
  });

  test('without a size asked for, each portion has its share of what is left', () => {
    const found = figuresOf(
      received('10', '6'),
      weighed('fat', '4'),
      portioned({ count: 12, grams: lb('7') }),
    );
    expect(shown(found.provisional?.costs.usableCostPerLb)).toBe('10');
    expect(shown(found.provisional?.costs.portionCost)).toBe('5');
  });

  test('the size asked for stands, and nothing is said of what portions in doubt give away', () => {
    const said = portioned({ count: 12, eachGrams: oz('6'), grams: lb('7') });
    const costs = figuresOf(received('10', '6'), weighed('fat', '4'), said).provisional?.costs;
    expect(shown(costs?.portionCost)).toBe('3.75');
    expect(costs?.giveawayPerPortion).toBeUndefined();
  });

  test('too heavy before any portion was said: no provisional costs either', () => {
    const found = figuresOf(received('10', '5'), weighed('trim', '6'), weighed('fat', '4.5'));
    expect(found.overweight).toBe(true);
    expect(found.provisional).toBeUndefined();
  });
});

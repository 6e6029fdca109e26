// What a usable pound and a portion cost, with and without labour and packing.
import { describe, expect, test } from 'vitest';
import type { FactOf } from '../../src/core/facts.ts';
import { figures } from '../../src/core/figures.ts';
import {
  AVOIDABLE,
  d,
  figuresOf,
  lb,
  oz,
  PAID_ANYWAY,
  portioned,
  received,
  shown,
  testOf,
  weighed,
} from './given.ts';

const labored = (minutes?: string, ratePerHour?: string): FactOf<'labored'> => ({
  type: 'labored',
  minutes: minutes === undefined ? undefined : d(minutes),
  ratePerHour: ratePerHour === undefined ? undefined : d(ratePerHour),
});
const packed = (costEach: string): FactOf<'packed'> => ({ type: 'packed', costEach: d(costEach) });

describe('costs', () => {
  const tenPounds = [received('10', '6'), portioned({ count: 14, eachGrams: oz('8'), grams: lb('7') })];

  test('wait for the price', () => {
    const unpriced = figuresOf(received('10'), portioned({ grams: lb('7') }));
    expect(unpriced.costs).toBeUndefined();
    expect(unpriced.pricePerLb).toBeUndefined();
    expect(shown(unpriced.portions?.yieldPct)).toBe('70');
  });

  test('are not told of a piece that cost nothing: a factor of nothing has no sense', () => {
    expect(figuresOf(received('10', '0'), portioned({ grams: lb('7') })).costs).toBeUndefined();
  });

  test('come with a price said later', () => {
    const priced = figuresOf(received('10'), portioned({ grams: lb('7') }), {
      type: 'priced',
      item: 'ribeye',
      perLb: d('6'),
    });
    expect(shown(priced.costs?.usableCostPerLb)).toBe('8.571429');
  });

  test('of a piece paid as a whole use the sum that was paid', () => {
    const found = figuresOf(
      { type: 'received', item: 'ribeye', grams: lb('28.6'), cost: d('211.64') },
      portioned({ grams: lb('22') }),
    );
    expect(shown(found.pricePerLb)).toBe('7.4');
    expect(shown(found.purchaseCost)).toBe('211.64');
    expect(shown(found.costs?.usableCostPerLb)).toBe('9.62');
  });

  test('without labour and packing are loaded with nothing', () => {
    const { costs } = figuresOf(...tenPounds);
    expect(shown(costs?.loadedCostPerLb)).toBe(shown(costs?.usableCostPerLb));
    expect(shown(costs?.loadedPortionCost)).toBe(shown(costs?.portionCost));
  });

  test('take minutes only with a rate, and a rate only with minutes', () => {
    expect(figuresOf(...tenPounds, labored('20')).labor.cost).toBeUndefined();
    expect(figuresOf(...tenPounds, labored(undefined, '21')).labor.cost).toBeUndefined();
    expect(shown(figuresOf(...tenPounds, labored('20', '21')).labor.cost)).toBe('7');
    expect(shown(figuresOf(...tenPounds, labored('20')).costs?.loadedCostPerLb)).toBe('8.571429');
  });

  test('take packing only with a count', () => {
    expect(
      figuresOf(received('10', '6'), portioned({ grams: lb('7') }), packed('0.10')).packingCost,
    ).toBeUndefined();
    expect(shown(figuresOf(...tenPounds, packed('0.10')).costs?.loadedCostPerLb)).toBe('8.771429');
  });

  test('keep labour that is paid anyway in the loaded cost and out of the compared one', () => {
    const test = testOf(...tenPounds, labored('20', '21'), packed('0.10'));
    const [avoidable, fixed] = [figures(test, AVOIDABLE).costs, figures(test, PAID_ANYWAY).costs];
    expect(shown(avoidable?.comparedCostPerLb)).toBe('9.771429');
    expect(shown(fixed?.comparedCostPerLb)).toBe('8.771429');
    expect(shown(fixed?.loadedCostPerLb)).toBe('9.771429');
    expect(shown(avoidable?.loadedCostPerLb)).toBe('9.771429');
  });

  test('of the mean portion are told from more than 1 % off the target', () => {
    const weighing = (grams: string) =>
      figuresOf(received('20', '5'), portioned({ count: 10, eachGrams: oz('16'), grams: lb(grams) })).costs;
    expect(weighing('10.1')?.meanPortionCost).toBeUndefined();
    expect(weighing('9.9')?.giveawayPerPortion).toBeUndefined();
    expect(weighing('10.101')?.meanPortionCost).toBeDefined();
    expect(weighing('9.899')?.meanPortionCost).toBeDefined();
    expect(shown(weighing('10.2')?.giveawayPerPortion)).toBe('0.196078'); // 100 ÷ 10.2 × 0.02
    expect(shown(weighing('9.8')?.giveawayPerPortion)).toBe('-0.204082');
  });

  test('can be below zero where the trim is worth more than the piece', () => {
    const found = figuresOf(received('10', '1'), weighed('trim', '5', '3'), portioned({ grams: lb('5') }));
    expect(shown(found.costs?.usableCostPerLb)).toBe('-1');
  });
});

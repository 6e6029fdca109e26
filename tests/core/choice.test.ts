// When a difference is too close to call: given what the tests yielded, at these prices.
import { describe, expect, test } from 'vitest';
import { itemVerdict } from '../../src/core/verdict.ts';
import { d, lb, portioned, received } from './given.ts';
import { judged, yielding } from './judged.ts';

describe('close, with one or two tests, is within 1 point of yield', () => {
  // At 6.00 a pound the break-even yield is 600 ÷ ready-cut price; the yield is 70 %.
  test.each([
    ['exactly 1 point above', { perLb: '7.1', readyCut: '10' }, 'close'],
    ['just more than 1 point above', { perLb: '7.1001', readyCut: '10' }, 'buy'],
    ['exactly 1 point below', { perLb: '6.9', readyCut: '10' }, 'close'],
    ['just more than 1 point below', { perLb: '6.8999', readyCut: '10' }, 'cut'],
  ])('%s', (_, { perLb, readyCut }, choice) => {
    const facts = [received('10', perLb), portioned({ grams: lb('7') })];
    expect(judged({ facts, readyCut }).choice).toBe(choice);
    expect(judged({ facts, readyCut, pool: yielding('7') }).choice).toBe(choice);
    expect(judged({ facts, readyCut, pool: yielding('7', '9') }).choice).toBe(choice);
  });

  test('of the test at hand, not of what the other one yielded', () => {
    expect(judged({ readyCut: '8', pool: yielding('7', '7.5') }).choice).toBe('buy'); // break-even 75 %
  });

  test('for an item of the pooled yield', () => {
    const at = (pricePerLb: string) =>
      itemVerdict({ pool: yielding('7', '8'), pricePerLb: d(pricePerLb), readyCutPerLb: d('10') }).choice;
    expect(['7.3', '7.4', '7.6', '7.7'].map(at)).toEqual(['cut', 'close', 'close', 'buy']);
  });
});

describe('close, with three tests or more, is where the break-even yield is in mean ± t × s ÷ √n', () => {
  // Yields 74, 75, 76: mean 75, s 1, t(0.95, 2) 2.9200, so 73.3141 to 76.6859.
  const three = yielding('7.4', '7.5', '7.6');
  test.each([
    ['7.33', 'cut'],
    ['7.332', 'close'],
    ['7.668', 'close'],
    ['7.67', 'buy'],
  ])('for the item at %s against 10.00: %s', (pricePerLb, choice) => {
    expect(itemVerdict({ pool: three, pricePerLb: d(pricePerLb), readyCutPerLb: d('10') }).choice).toBe(
      choice,
    );
  });

  test('with a wide spread much more is close than within a point', () => {
    const wide = yielding('6.5', '7.5', '8.5');
    expect(itemVerdict({ pool: wide, pricePerLb: d('6.5'), readyCutPerLb: d('10') }).choice).toBe('close');
    expect(itemVerdict({ pool: three, pricePerLb: d('6.5'), readyCutPerLb: d('10') }).choice).toBe('cut');
  });

  test('with no spread a difference of half a point decides', () => {
    const same = yielding('7.5', '7.5', '7.5');
    expect(itemVerdict({ pool: same, pricePerLb: d('7.45'), readyCutPerLb: d('10') }).choice).toBe('cut');
    expect(itemVerdict({ pool: same, pricePerLb: d('7.55'), readyCutPerLb: d('10') }).choice).toBe('buy');
  });

  test('for a single test too its own price decides the side, the spread of all whether it is close', () => {
    const facts = [received('10', '7'), portioned({ grams: lb('7.6') })];
    expect(judged({ facts, readyCut: '10', pool: three }).choice).toBe('cut'); // break-even 70 %
    const dear = [received('10', '7.5'), portioned({ grams: lb('7.6') })];
    expect(judged({ facts: dear, readyCut: '10', pool: three }).choice).toBe('close'); // break-even 75 %
  });
});

describe('a saving of exactly zero', () => {
  const even = [received('10', '6'), portioned({ grams: lb('7.5') })];

  test('is close with one test', () => {
    const verdict = judged({ facts: even, readyCut: '8' });
    expect(verdict.savingPerLb?.isZero()).toBe(true);
    expect(verdict.choice).toBe('close');
  });

  test('is close too where the yields of three tests are all far away', () => {
    expect(judged({ facts: even, readyCut: '8', pool: yielding('6', '6', '6') }).choice).toBe('close');
  });
});

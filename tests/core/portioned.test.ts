// The portions of a test as its facts tell them: what was said first, and what fills it in or comes on top.
import { describe, expect, test } from 'vitest';
import { fromGrams, type Grams } from '../../src/core/quantity.ts';
import { countOf, type Test } from '../../src/core/test.ts';
import { lb, listed, morePortions, oz, portioned, received, shown, testOf } from './given.ts';

const inLb = (grams: Grams | undefined): string | undefined => shown(grams && fromGrams(grams, 'lb'));
const batchesOf = ({ portions }: Test): readonly string[] =>
  portions.batches.map(
    ({ count, eachGrams }) => `${count ?? '?'} × ${shown(eachGrams && fromGrams(eachGrams, 'oz')) ?? '?'} oz`,
  );

describe('portions', () => {
  test('a weight said after the count fills in', () => {
    const test = testOf(
      received('14.2'),
      portioned({ count: 12, eachGrams: oz('16') }),
      portioned({ grams: lb('11.2') }),
    );
    expect(batchesOf(test)).toEqual(['12 × 16 oz']);
    expect(inLb(test.portions.grams)).toBe('11.2');
  });

  test('a count said after the weight fills in', () => {
    const test = testOf(
      received('14.2'),
      portioned({ grams: lb('11.2') }),
      portioned({ count: 12, eachGrams: oz('16') }),
    );
    expect(batchesOf(test)).toEqual(['12 × 16 oz']);
    expect(inLb(test.portions.grams)).toBe('11.2');
  });

  test('a size said after the count fills in, and a count said after the size', () => {
    expect(
      batchesOf(testOf(received('14.2'), portioned({ count: 12 }), portioned({ eachGrams: oz('16') }))),
    ).toEqual(['12 × 16 oz']);
    expect(
      batchesOf(testOf(received('14.2'), portioned({ eachGrams: oz('16') }), portioned({ count: 12 }))),
    ).toEqual(['12 × 16 oz']);
  });

  test('two more are of the last size where none was said', () => {
    const test = testOf(
      received('20'),
      portioned({ count: 12, eachGrams: oz('16') }),
      morePortions({ count: 2 }),
    );
    expect(batchesOf(test)).toEqual(['12 × 16 oz', '2 × 16 oz']);
    expect(countOf(test.portions)).toBe(14);
    expect(test.portions.grams).toBeUndefined();
  });

  test('more with a weight comes on top of the weighed total', () => {
    const said = [portioned({ count: 12, grams: lb('11.2') }), morePortions({ count: 2, grams: lb('2.1') })];
    expect(inLb(testOf(received('20'), ...said).portions.grams)).toBe('13.3');
  });

  test('more by count and size comes on top of the weighed total at its size', () => {
    const said = [
      portioned({ count: 12, eachGrams: oz('16'), grams: lb('11.2') }),
      morePortions({ count: 2 }),
    ];
    expect(inLb(testOf(received('20'), ...said).portions.grams)).toBe('13.2');
  });

  test('more with a weight on top of portions that were only counted does not lose those', () => {
    const said = [
      portioned({ count: 12, eachGrams: oz('16') }),
      morePortions({ count: 2, grams: lb('2.1') }),
    ];
    expect(inLb(testOf(received('20'), ...said).portions.grams)).toBe('14.1');
  });

  test('lists of weights append', () => {
    const test = testOf(received('20'), listed('16.2', '15.9'), listed('16.4'));
    expect(test.portions.list.map((grams) => shown(fromGrams(grams, 'oz')))).toEqual([
      '16.2',
      '15.9',
      '16.4',
    ]);
  });

  test('removed, all that was said of them is gone', () => {
    const said = [
      portioned({ count: 12, eachGrams: oz('16'), grams: lb('11.2') }),
      listed('16'),
      { type: 'removed' as const, part: 'portions' },
    ];
    expect(testOf(received('20'), ...said).portions).toEqual({ batches: [], list: [] });
  });
});

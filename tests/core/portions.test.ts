// What the portions weigh, from the best that is known of them.
import { describe, expect, test } from 'vitest';
import type { Fact } from '../../src/core/facts.ts';
import { fromGrams, type Grams } from '../../src/core/quantity.ts';
import { figuresOf, lb, listed, morePortions, oz, portioned, received, shown } from './given.ts';

const inLb = (grams: Grams | undefined) => shown(grams && fromGrams(grams, 'lb'));
const inOz = (grams: Grams | undefined) => shown(grams && fromGrams(grams, 'oz'));

describe('the portion weight', () => {
  const basisOf = (...said: readonly Fact[]) => {
    const { portions } = figuresOf(received('20', '5'), ...said);
    return {
      lb: inLb(portions?.grams),
      basis: portions?.basis,
      count: portions?.count,
      meanOz: inOz(portions?.meanGrams),
    };
  };

  test('is the sum of a list without a count', () => {
    expect(basisOf(listed('16.2', '15.9', '16.4'))).toEqual({
      lb: '3.03125',
      basis: 'list',
      count: 3,
      meanOz: '16.166667',
    });
  });

  test('is the sum of a list as long as the count, whatever total was weighed', () => {
    const said = portioned({ count: 3, eachGrams: oz('16'), grams: lb('3.2') });
    expect(basisOf(said, listed('16.2', '15.9', '16.4'))).toMatchObject({ lb: '3.03125', basis: 'list' });
  });

  test('is the weighed total where the list is shorter than the count', () => {
    expect(basisOf(portioned({ count: 12, grams: lb('11.2') }), listed('16'))).toMatchObject({
      lb: '11.2',
      basis: 'total',
    });
  });

  test('is count × the mean of a shorter list: a sample', () => {
    expect(basisOf(portioned({ count: 12, eachGrams: oz('16') }), listed('16.2', '15.8', '16.6'))).toEqual({
      lb: '12.15', basis: 'sample', count: 12, meanOz: '16.2',
    }); // prettier-ignore
  });

  test('is exact where a sample of three comes out even', () => {
    const { portions } = figuresOf(received('20'), portioned({ count: 12 }), listed('16.1', '16.2', '16'));
    expect(portions?.grams.eq(oz('193.2'))).toBe(true);
  });

  test('is count × the size asked for where nothing was weighed, and then no mean is known', () => {
    expect(basisOf(portioned({ count: 12, eachGrams: oz('16') }))).toEqual({
      lb: '12', basis: 'nominal', count: 12, meanOz: undefined,
    }); // prettier-ignore
  });

  test('of two sizes is the sum over both', () => {
    const said = [
      portioned({ count: 12, eachGrams: oz('16') }),
      morePortions({ count: 4, eachGrams: oz('8') }),
    ];
    expect(basisOf(...said)).toMatchObject({ lb: '14', basis: 'nominal', count: 16 });
    expect(figuresOf(received('20'), ...said).portions?.targetGrams).toBeUndefined();
  });

  test('is not known from a count without a size, or a size without a count', () => {
    expect(basisOf(portioned({ count: 12 }))).toMatchObject({ lb: undefined });
    expect(basisOf(portioned({ eachGrams: oz('16') }))).toMatchObject({ lb: undefined });
  });

  test('of no portions at all is none, so that nothing is divided by zero', () => {
    expect(
      figuresOf(received('20', '5'), portioned({ count: 0, eachGrams: oz('16') })).costs,
    ).toBeUndefined();
  });
});

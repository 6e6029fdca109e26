// Cut, buy, too close to call, or unknown: given what the tests say, at these prices.
import { describe, expect, test } from 'vitest';
import type { Fact } from '../../src/core/facts.ts';
import { contribution, EMPTY_POOL, withTest } from '../../src/core/pool.ts';
import { itemVerdict } from '../../src/core/verdict.ts';
import {
  AVOIDABLE,
  closed,
  d,
  lb,
  oz,
  PAID_ANYWAY,
  portioned,
  received,
  shown,
  testOf,
  weighed,
} from './given.ts';
import { judged, tenToSeven, yielding } from './judged.ts';

describe('given 10 lb at 6.00 that gave 7 lb (8.57 a usable pound)', () => {
  test.each([
    ['9.50', 'cut', '0.928571'],
    ['8.00', 'buy', '-0.571429'],
    ['8.60', 'close', '0.028571'],
  ])('ready-cut at %s: %s', (readyCut, choice, saving) => {
    const verdict = judged({ readyCut });
    expect(verdict.choice).toBe(choice);
    expect(shown(verdict.savingPerLb)).toBe(saving);
    expect(verdict.missing).toEqual([]);
  });

  test('the three turning points are told', () => {
    const verdict = judged({ readyCut: '9.50' });
    expect(shown(verdict.breakEvenPricePerLb)).toBe('6.65');
    expect(shown(verdict.breakEvenReadyCutPerLb)).toBe('8.571429');
    expect(shown(verdict.breakEvenYieldPct)).toBe('63.157895');
  });
});

describe('unknown', () => {
  test('without a ready-cut price; the price at which it would turn is told', () => {
    const verdict = judged({});
    expect(verdict).toMatchObject({ choice: 'unknown', missing: ['readyCut'] });
    expect(shown(verdict.breakEvenReadyCutPerLb)).toBe('8.571429');
    expect(verdict.savingPerLb).toBeUndefined();
  });

  test('without a purchase price; the price at which it would turn is told', () => {
    const verdict = judged({ facts: [received('10'), portioned({ grams: lb('7') })], readyCut: '9.50' });
    expect(verdict).toMatchObject({ choice: 'unknown', missing: ['price'] });
    expect(shown(verdict.breakEvenPricePerLb)).toBe('6.65');
    expect(verdict.savingPerLb).toBeUndefined();
  });

  test('without portions nothing turns it', () => {
    const verdict = judged({ facts: [received('10', '6'), weighed('fat', '1')], readyCut: '9.50' });
    expect(verdict).toMatchObject({ choice: 'unknown', missing: ['portions'] });
    expect(verdict.breakEvenPricePerLb).toBeUndefined();
    expect(verdict.breakEvenYieldPct).toBeUndefined();
  });

  test('while the piece does not balance', () => {
    const verdict = judged({
      facts: [received('10', '6'), portioned({ grams: lb('11') })],
      readyCut: '9.50',
    });
    expect(verdict).toMatchObject({ choice: 'unknown', missing: ['balance'] });
    expect(verdict.savingPerLb).toBeUndefined();
  });

  test('with everything missing, each thing is named', () => {
    expect(judged({ facts: [received('10')] }).missing).toEqual(['readyCut', 'price', 'portions']);
  });

  test('a price of nothing is no price', () => {
    expect(judged({ readyCut: '0' })).toMatchObject({ choice: 'unknown', missing: ['readyCut'] });
    const free = judged({ facts: [received('10', '0'), portioned({ grams: lb('7') })], readyCut: '9' });
    expect(free).toMatchObject({ choice: 'unknown', missing: ['price'] });
  });

  test('for an item without closed tests', () => {
    const verdict = itemVerdict({ pool: EMPTY_POOL, pricePerLb: d('6'), readyCutPerLb: d('9') });
    expect(verdict).toMatchObject({ choice: 'unknown', missing: ['tests'], tests: 0 });
    expect(verdict.breakEvenPricePerLb).toBeUndefined();
  });
});

describe('how many tests stand behind it', () => {
  test.each([
    ['an open first test counts as one', EMPTY_POOL, 1],
    ['one closed', yielding('7'), 1],
    ['two closed', yielding('7', '7'), 2],
  ])('%s', (_, pool, tests) => {
    expect(judged({ readyCut: '9', pool }).tests).toBe(tests);
  });
});

describe('what is counted and what is left out', () => {
  const worked: readonly Fact[] = [
    received('10', '6'),
    weighed('trim', '1', '2'),
    portioned({ count: 14, eachGrams: oz('8'), grams: lb('7') }),
    { type: 'labored', minutes: d('20'), ratePerHour: d('21') },
    { type: 'packed', costEach: d('0.10') },
  ];

  test('all that is known, where the labour is avoidable', () => {
    const verdict = judged({ facts: worked, readyCut: '10' });
    expect(verdict).toMatchObject({ counted: ['credits', 'labor', 'packing'], leftOut: [] });
    expect(shown(verdict.savingPerLb)).toBe('0.514286'); // 10 − (60 − 2 + 7 + 1.40) ÷ 7
  });

  test('not labour that is paid anyway: it can turn the answer', () => {
    const buy = judged({ facts: worked, readyCut: '9' });
    const cut = judged({ facts: worked, readyCut: '9', settings: PAID_ANYWAY });
    expect([buy.choice, cut.choice]).toEqual(['buy', 'cut']);
    expect(cut).toMatchObject({ counted: ['credits', 'packing'], leftOut: ['fixedLabor'] });
    expect(shown(cut.breakEvenReadyCutPerLb)).toBe('8.485714');
  });

  test('not minutes without a rate', () => {
    const facts: readonly Fact[] = [...tenToSeven, { type: 'labored', minutes: d('20') }];
    expect(judged({ facts, readyCut: '10' })).toMatchObject({
      counted: [],
      leftOut: ['credits', 'laborWithoutRate', 'packing'],
    });
  });

  test('nothing, where nobody said anything', () => {
    expect(judged({ readyCut: '10' })).toMatchObject({
      counted: [],
      leftOut: ['credits', 'labor', 'packing'],
    });
  });

  test('for an item whose tests had both kinds of labour, the one that is avoidable', () => {
    const [one, other] = [AVOIDABLE, PAID_ANYWAY].map((settings) =>
      contribution(testOf(...worked, closed()), settings),
    );
    const pool = withTest(one ?? EMPTY_POOL, other ?? EMPTY_POOL);
    const verdict = itemVerdict({ pool, pricePerLb: d('6'), readyCutPerLb: d('10') });
    expect(verdict).toMatchObject({
      counted: ['credits', 'labor', 'packing'],
      leftOut: ['fixedLabor'],
      tests: 2,
    });
  });

  test('for an item what its tests brought', () => {
    const pool = withTest(EMPTY_POOL, contribution(testOf(...worked, closed()), AVOIDABLE) ?? EMPTY_POOL);
    const verdict = itemVerdict({ pool, pricePerLb: d('6'), readyCutPerLb: d('10') });
    expect(verdict).toMatchObject({ counted: ['credits', 'labor', 'packing'], leftOut: [], tests: 1 });
    expect(shown(verdict.savingPerLb)).toBe('0.514286');
  });
});

describe('per portion as cut', () => {
  const cutting = (portions: string): readonly Fact[] => [
    received('10', '6'),
    portioned({ count: 12, eachGrams: oz('8'), grams: lb(portions) }),
  ];

  test('portions on target say the same as the pound', () => {
    const verdict = judged({ facts: cutting('6'), readyCut: '12' });
    expect(verdict).toMatchObject({ choice: 'cut', portionContradicts: false });
    expect(shown(verdict.savingPerPortion)).toBe('1');
  });

  test('portions cut too heavy can say the opposite: cheaper by the pound, dearer on the plate', () => {
    const verdict = judged({ facts: cutting('7.5'), readyCut: '9' });
    expect(verdict).toMatchObject({ choice: 'cut', portionContradicts: true });
    expect(shown(verdict.savingPerLb)).toBe('1');
    expect(shown(verdict.savingPerPortion)).toBe('-0.5');
  });

  test('portions cut too light can say the opposite too', () => {
    const verdict = judged({ facts: cutting('5'), readyCut: '11' });
    expect(verdict).toMatchObject({ choice: 'buy', portionContradicts: true });
    expect(shown(verdict.savingPerPortion)).toBe('0.5');
  });

  test('where the pound costs the same either way, heavy portions contradict nothing', () => {
    const verdict = judged({ facts: cutting('7.5'), readyCut: '8' });
    expect(verdict).toMatchObject({ choice: 'close', portionContradicts: false });
    expect(shown(verdict.savingPerPortion)).toBe('-1');
  });

  test('nothing is said of it where no portion was weighed', () => {
    const facts = [received('10', '6'), portioned({ count: 12, eachGrams: oz('8') })];
    const verdict = judged({ facts, readyCut: '9' });
    expect(verdict.savingPerPortion).toBeUndefined();
    expect(verdict.portionContradicts).toBe(false);
  });
});

// A cutting test as its facts tell it: given what was said, in this order, then this stands.
import { describe, expect, test } from 'vitest';
import type { Fact, Recorded } from '../../src/core/facts.ts';
import { fromGrams, type Grams } from '../../src/core/quantity.ts';
import { foldTest, type Test } from '../../src/core/test.ts';
import {
  another,
  closed,
  corrected,
  d,
  lb,
  logOf,
  received,
  shown,
  testOf,
  undone,
  weighed,
} from './given.ts';

const inLb = (grams: Grams | undefined): string | undefined => shown(grams && fromGrams(grams, 'lb'));
const partsOf = (test: Test): Record<string, string | undefined> =>
  Object.fromEntries(test.parts.map(({ part, grams }) => [part, inLb(grams)]));
const removed = (part: string): Fact => ({ type: 'removed', part });

describe('weighing parts', () => {
  test('a part said is there', () => {
    expect(partsOf(testOf(received('14.2'), weighed('trim', '1.1')))).toEqual({ trim: '1.1' });
  });

  test('a part set again is replaced, and keeps its place', () => {
    const test = testOf(
      received('14.2'),
      weighed('trim', '1.1'),
      weighed('fat', '1.9'),
      weighed('trim', '1.3'),
    );
    expect(Object.entries(partsOf(test))).toEqual([['trim', '1.3'], ['fat', '1.9']]); // prettier-ignore
  });

  test('another weight of a part comes on top', () => {
    expect(partsOf(testOf(received('14.2'), weighed('fat', '1.9'), another('fat', '0.5')))).toEqual({
      fat: '2.4',
    });
  });

  test('another weight of a part that is not there yet begins it', () => {
    expect(partsOf(testOf(received('14.2'), another('fat', '0.5')))).toEqual({ fat: '0.5' });
  });

  test('a part removed is gone, and can be weighed again', () => {
    const gone = [received('14.2'), weighed('fat', '1.9'), removed('fat')];
    expect(partsOf(testOf(...gone))).toEqual({});
    expect(partsOf(testOf(...gone, another('fat', '0.5')))).toEqual({ fat: '0.5' });
  });

  test('a credit stays with the part when it is weighed again', () => {
    const test = testOf(received('14.2'), weighed('trim', '1.1', '1.50'), weighed('trim', '1.3'));
    expect(shown(test.credits['trim'])).toBe('1.5');
  });
});

describe('correcting', () => {
  const upToFat = [received('14.2', '7.40'), weighed('trim', '1.1'), weighed('fat', '1.9')];

  test('holds in the place of what it corrects', () => {
    const test = testOf(...upToFat, another('trim', '0.2'), corrected('e2', weighed('trim', '1.3')));
    expect(Object.entries(partsOf(test))).toEqual([['trim', '1.5'], ['fat', '1.9']]); // prettier-ignore
  });

  test('can turn a part into another one', () => {
    expect(partsOf(testOf(...upToFat, corrected('e2', weighed('lip', '1.1'))))).toEqual({
      lip: '1.1',
      fat: '1.9',
    });
  });

  test('twice: the newest holds', () => {
    const said = [corrected('e2', weighed('trim', '1.3')), corrected('e2', weighed('trim', '1.4'))];
    expect(partsOf(testOf(...upToFat, ...said))).toEqual({ trim: '1.4', fat: '1.9' });
  });

  test('undone restores what was there', () => {
    expect(partsOf(testOf(...upToFat, corrected('e2', weighed('trim', '1.3')), undone('e4')))).toEqual({
      trim: '1.1', fat: '1.9',
    }); // prettier-ignore
  });

  test('twice, the last undone, leaves the first', () => {
    const said = [
      corrected('e2', weighed('trim', '1.3')),
      corrected('e2', weighed('trim', '1.4')),
      undone('e5'),
    ];
    expect(partsOf(testOf(...upToFat, ...said))).toEqual({ trim: '1.3', fat: '1.9' });
  });

  test('the received weight and the cut keeps all that was weighed since', () => {
    const test = testOf(...upToFat, corrected('e1', received('14.5', '7.40', 'striploin')));
    expect(test.item).toBe('striploin');
    expect(inLb(test.received.grams)).toBe('14.5');
    expect(partsOf(test)).toEqual({ trim: '1.1', fat: '1.9' });
  });
});

describe('undoing', () => {
  const upToFat = [received('14.2', '7.40'), weighed('trim', '1.1'), weighed('fat', '1.9')];

  test('takes an entry out', () => {
    expect(partsOf(testOf(...upToFat, undone('e3')))).toEqual({ trim: '1.1' });
  });

  test('one after the other takes both out', () => {
    expect(partsOf(testOf(...upToFat, undone('e3'), undone('e2')))).toEqual({});
  });

  test('an entry that took another one back makes that one stand again', () => {
    expect(partsOf(testOf(...upToFat, undone('e3'), undone('e4')))).toEqual({ trim: '1.1', fat: '1.9' });
  });

  test('a replacement restores the weight before it', () => {
    expect(partsOf(testOf(...upToFat, weighed('trim', '1.3'), undone('e4')))).toEqual({
      trim: '1.1',
      fat: '1.9',
    });
  });

  test('an addition leaves what was there', () => {
    expect(partsOf(testOf(...upToFat, another('fat', '0.5'), undone('e4')))).toEqual({
      trim: '1.1',
      fat: '1.9',
    });
  });

  test('a removal brings the part back', () => {
    expect(partsOf(testOf(...upToFat, removed('fat'), undone('e4')))).toEqual({ trim: '1.1', fat: '1.9' });
  });

  test('an entry takes out all its facts at once', () => {
    const [first, second, third] = logOf(upToFat);
    if (!first || !second || !third) throw new Error('three facts were given');
    const oneEntry: Recorded[] = [first, { ...second, entry: 'both' }, { ...third, entry: 'both' }];
    const undo: Recorded = { ...third, entry: 'undo', fact: undone('both') };
    expect(partsOf(foldTest([...oneEntry, undo]))).toEqual({});
  });

  test('a finish opens the test again', () => {
    expect(testOf(...upToFat, closed()).status).toBe('closed');
    expect(testOf(...upToFat, closed(), undone('e4')).status).toBe('open');
  });

  test('the piece itself drops the test', () => {
    expect(testOf(...upToFat, undone('e1')).status).toBe('dropped');
  });

  test('the drop of a test brings it back', () => {
    expect(testOf(...upToFat, { type: 'dropped' }).status).toBe('dropped');
    expect(testOf(...upToFat, { type: 'dropped' }, undone('e4')).status).toBe('open');
  });

  test('another name gives the first one back', () => {
    const renamed = corrected('e1', received('14.2', '7.40', 'striploin'));
    expect(testOf(...upToFat, renamed).item).toBe('striploin');
    expect(testOf(...upToFat, renamed, undone('e4')).item).toBe('ribeye');
  });
});

describe('the price of a test', () => {
  const priced = (perLb: string): Fact => ({ type: 'priced', item: 'ribeye', perLb: d(perLb) });

  test('comes with a price said while it has none', () => {
    expect(shown(testOf(received('14.2'), priced('7.40')).received.perLb)).toBe('7.4');
  });

  test('stays as it is when another price is said', () => {
    expect(shown(testOf(received('14.2', '7.40'), priced('7.95')).received.perLb)).toBe('7.4');
    const paid: Fact = { type: 'received', item: 'ribeye', grams: lb('14.2'), cost: d('105.08') };
    expect(testOf(paid, priced('7.95')).received.perLb).toBeUndefined();
  });
});

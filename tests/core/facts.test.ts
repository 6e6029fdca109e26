// The log: read again as it was written, refused where it is not understood.
import { describe, expect, test } from 'vitest';
import { decodeFact, encodeFact, type Fact } from '../../src/core/facts.ts';
import { evolveTest, foldTest, type Test } from '../../src/core/test.ts';
import { another, closed, corrected, lb, listed, logOf, morePortions, oz, portioned, received, testOf, undone, weighed } from './given.ts'; // prettier-ignore
import { fc } from './property.ts';

describe('a log', () => {
  test('that does not begin with a piece is refused', () => {
    expect(() => testOf(weighed('trim', '1.1'))).toThrow('does not begin');
    expect(() => foldTest([])).toThrow('does not begin');
  });

  const said = fc.constantFrom<Fact[]>(
    weighed('trim', '1.1', '1.50'), weighed('fat', '1.9'), another('fat', '0.4'), { type: 'removed', part: 'fat' }, closed(), listed('16'),
    portioned({ count: 12, eachGrams: oz('16') }), morePortions({ count: 2 }), portioned({ grams: lb('11') }),
  ); // prettier-ignore

  /** What was said, and now and then an undo or a correction of something before it: so many entries back. */
  const anyLog = fc
    .array(fc.oneof(said, fc.tuple(fc.constantFrom('undo', 'correct'), fc.nat({ max: 7 }))), {
      maxLength: 12,
    })
    .map((entries) => {
      const facts = entries.map((entry, index): Fact => {
        if (!Array.isArray(entry)) return entry;
        const target = `e${Math.max(1, index + 1 - entry[1])}`;
        return entry[0] === 'undo' ? undone(target) : corrected(target, weighed('trim', '1.3'));
      });
      return logOf([received('14.2', '7.40'), ...facts]);
    });

  test('read fact by fact tells the same as read at once', () => {
    fc.assert(
      fc.property(anyLog, (log) => {
        const stepwise = log.reduce<Test | undefined>(evolveTest, undefined);
        expect(stepwise).toEqual(foldTest(log));
      }),
    );
  });

  test('comes back from the disk as it was written', () => {
    fc.assert(
      fc.property(anyLog, (log) => {
        const back = log.map((recorded) => ({ ...recorded, fact: decodeFact(encodeFact(recorded.fact)) }));
        expect(back.map(({ fact }) => encodeFact(fact))).toEqual(log.map(({ fact }) => encodeFact(fact)));
        expect(JSON.stringify(foldTest(back))).toBe(JSON.stringify(foldTest(log)));
      }),
    );
  });

  test.each([
    ['a fact of an unknown kind', '{"type":"smoked","grams":"1"}'],
    ['an unknown detail', '{"type":"turned","why":"x"}'],
    ['a float', '{"type":"tared","container":"tub","grams":0.1}'],
    ['a figure that is none', '{"type":"tared","container":"tub","grams":"1e3"}'],
    ['half a portion', '{"type":"portioned","mode":"set","count":12.5}'],
    ['a missing detail', '{"type":"weighed","part":"fat","grams":"1"}'],
  ])('with %s is refused, not skipped', (_, text) => {
    expect(() => decodeFact(text)).toThrow();
  });
});

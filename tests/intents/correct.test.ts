import { describe, expect, it } from 'vitest';
import type { EntryOf } from '../../src/core/entry.ts';
import { another, closed, corrected, d, lb, portioned, received, weighed } from '../core/given.ts';
import { answer, by, fact, factsOf, given, outcomeOf } from './scene.ts';

type Correct = EntryOf<'correct'>;

const RIBEYE = fact(received('14.2', '7.40'));
const no = (said: Omit<Correct, 'kind'>): Correct => ({ kind: 'correct', ...said });
/** "no, 1.3": it could be a weight or a price. */
const bare = (figure: string): Correct =>
  no({ number: { weight: lb(figure), price: d(figure), money: d(figure) } });

describe('a bare number after no', () => {
  it('is the only quantity of the last entry', () => {
    const scene = given(RIBEYE, fact(weighed('trim', '1.1')));
    expect(factsOf(scene, bare('1.3'))).toEqual([corrected('e2', weighed('trim', '1.3'))]);
  });

  it('is asked about where the entry had a weight and a price', () => {
    expect(outcomeOf(given(RIBEYE), bare('7.60'))).toBe('ask-correct-which');
    const priced = received('14.2', '7.60');
    expect(factsOf(given(RIBEYE), answer(given(RIBEYE), bare('7.60'), 'newPrice'))).toEqual([
      corrected('e1', priced),
    ]);
  });

  it('leaves a credit alone that came in by itself', () => {
    const earlier = [
      RIBEYE,
      fact(weighed('trim', '1', '2')),
      fact(portioned({ grams: lb('13') })),
      fact(closed()),
    ];
    const scene = given(
      ...earlier,
      fact(received('15', '7.40'), { test: 3, item: 'ribeye' }),
      fact(weighed('trim', '1.1', '2'), { test: 3, item: 'ribeye' }),
    );
    expect(factsOf(scene, bare('1.2'))).toEqual([corrected('e6', weighed('trim', '1.2', '2'))]);
  });

  it('is what the last correction changed', () => {
    const scene = given(RIBEYE, fact(corrected('e1', received('14.2', '7.60'))));
    expect(factsOf(scene, bare('7.70'))).toEqual([corrected('e1', received('14.2', '7.70'))]);
  });
});

describe('another part', () => {
  it('takes the place of the entry, so that undoing it brings the entry back', () => {
    const scene = given(RIBEYE, fact(weighed('trim', '1.1')));
    expect(factsOf(scene, no({ newPart: 'fat' }))).toEqual([
      { type: 'undone', target: 'e2', bare: false },
      weighed('fat', '1.1'),
    ]);
  });

  it('is asked about where that part is weighed already, whichever came first', () => {
    const scene = given(RIBEYE, fact(weighed('fat', '1.9')), fact(weighed('trim', '1.1')));
    const entry = no({ newPart: 'trim', part: 'fat' });
    expect(outcomeOf(scene, entry)).toBe('ask-add-or-replace');
    expect(factsOf(scene, answer(scene, entry, 'add'))).toEqual([
      { type: 'undone', target: 'e2', bare: false },
      another('trim', '1.9'),
    ]);
  });
});

describe('another cut', () => {
  const STRIPLOIN = fact(received('12', '6', 'striploin'), { test: 2 });

  it('moves the entry as it stands with its corrections', () => {
    const trimmed = [
      fact(weighed('trim', '1.1'), { test: 2 }),
      fact(corrected('e3', weighed('trim', '1.3')), { test: 2 }),
    ];
    const scene = given(RIBEYE, STRIPLOIN, ...trimmed);
    expect(factsOf(scene, no({ newItem: 'ribeye' }))).toEqual([
      { type: 'undone', target: 'e3', bare: false },
      weighed('trim', '1.3'),
    ]);
  });

  it('is refused where it is not on the table', () => {
    expect(outcomeOf(given(RIBEYE, fact(weighed('trim', '1.1'))), no({ newItem: 'striploin' }))).toBe(
      'refused no-open-test',
    );
  });
});

describe('a field', () => {
  it('never reaches into a closed test while another is open', () => {
    const scene = given(
      RIBEYE,
      fact(portioned({ count: 14, eachGrams: lb('1') })),
      fact(closed()),
      fact(received('12', '6', 'striploin'), { test: 2 }),
    );
    expect(outcomeOf(scene, no({ count: 13 }))).toBe('refused nothing-to-correct');
  });

  it('of somebody else is corrected in the test that is one’s own', () => {
    const scene = by(given(RIBEYE, fact(portioned({ count: 14, eachGrams: lb('1') }))), 'ben');
    expect(factsOf(scene, no({ count: 13 }))).toEqual([
      corrected('e2', portioned({ count: 13, eachGrams: lb('1') })),
    ]);
  });
});

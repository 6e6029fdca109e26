import { describe, expect, it } from 'vitest';
import { lb, portioned, received, weighed } from '../core/given.ts';
import { answer, fact, factsOf, given, outcomeOf, testsOf } from './scene.ts';

const trim = (pounds: string, mode: 'set' | 'add' = 'set') =>
  ({ kind: 'weigh', part: 'trim', weight: lb(pounds), mode }) as const;
const RIBEYE = fact(received('14.2', '7.40'));

describe('a part is weighed', () => {
  it('is recorded for the only open test', () => {
    expect(factsOf(given(RIBEYE), trim('1.1'))).toEqual([weighed('trim', '1.1')]);
  });

  it('is a repeat where the amount is the same, whoever says it', () => {
    expect(outcomeOf(given(RIBEYE, fact(weighed('trim', '1.1'), { by: 'ben' })), trim('1.1'))).toBe(
      'answered line',
    );
  });

  it('is asked about where it differs, and the answer stays with the test', () => {
    const scene = given(RIBEYE, fact(weighed('trim', '1.1')));
    expect(outcomeOf(scene, trim('1.3'))).toBe('ask-add-or-replace');
    expect(answer(scene, trim('1.3'), 'add')).toMatchObject({ mode: 'add', test: 1 });
  });

  it('replaces where adding would be too much', () => {
    const scene = given(
      RIBEYE,
      fact(portioned({ count: 12, eachGrams: lb('1') })),
      fact(weighed('trim', '1.5')),
    );
    expect(factsOf(scene, trim('1.3'))).toEqual([weighed('trim', '1.3')]);
  });

  it('is never recorded where it is heavier than the piece, sure or not', () => {
    expect(outcomeOf(given(RIBEYE), { ...trim('15'), sure: true })).toBe('ask-heavier-than-piece');
  });

  it('goes to the test of a question also where the speaker is at another by now', () => {
    const scene = given(RIBEYE, fact(received('12', '6', 'striploin'), { test: 2 }));
    expect(testsOf(scene, trim('1.1'))).toEqual([2]);
    expect(testsOf(scene, { ...trim('1.1'), test: 1 })).toEqual([1]);
  });

  it('of a part with an inherited name has no credit', () => {
    const entry = { ...trim('1.1'), part: 'constructor' };
    expect(factsOf(given(RIBEYE), entry)).toEqual([weighed('constructor', '1.1')]);
  });
});

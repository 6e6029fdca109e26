import { describe, expect, it } from 'vitest';
import { corrected, received, undone, weighed } from '../core/given.ts';
import { by, fact, factsOf, given, outcomeOf } from './scene.ts';

const UNDO = { kind: 'undo' } as const;
const RIBEYE = fact(received('14.2', '7.40'));

describe('undo', () => {
  it('takes back the last entry of the speaker, not of others', () => {
    const scene = given(RIBEYE, fact(weighed('trim', '1.1')), fact(weighed('fat', '2'), { by: 'ben' }));
    expect(factsOf(scene, UNDO)).toEqual([undone('e2')]);
    expect(factsOf(by(scene, 'ben'), UNDO)).toEqual([undone('e3')]);
  });

  it('takes back a correction before what it corrected', () => {
    const scene = given(RIBEYE, fact(weighed('trim', '1.1')), fact(corrected('e2', weighed('trim', '1.3'))));
    expect(factsOf(scene, UNDO)).toEqual([undone('e3')]);
  });

  it('passes over what was taken back already', () => {
    const scene = given(RIBEYE, fact(weighed('trim', '1.1')), fact(undone('e2')));
    expect(factsOf(scene, UNDO)).toEqual([undone('e1')]);
  });

  it('passes over an entry in whose place somebody put another', () => {
    const moved = [
      fact({ type: 'undone', target: 'e3', bare: false }, { by: 'ben' }),
      fact(weighed('fat', '1.1'), { by: 'ben' }),
    ];
    const scene = given(RIBEYE, fact(weighed('bone', '0.5')), fact(weighed('trim', '1.1')), ...moved);
    expect(factsOf(scene, UNDO)).toEqual([undone('e2')]);
  });

  it('of a piece on which others have weighed is asked about', () => {
    expect(outcomeOf(given(RIBEYE, fact(weighed('fat', '2'), { by: 'ben' })), UNDO)).toBe('ask-undo-others');
  });

  it('of nothing is refused', () => {
    expect(outcomeOf(by(given(RIBEYE), 'ben'), UNDO)).toBe('refused nothing-to-undo');
  });
});

// The small parts of the channel by themselves.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { newBudget } from '../../src/channels/telegram/budget.ts';
import { split } from '../../src/channels/telegram/split.ts';
import { readTeamWish } from '../../src/language/team-words.ts';
import { voice } from './running.ts';

it('splits between lines, then between words, never longer than allowed', () => {
  expect(split('one two\nthree four', 12)).toEqual(['one two', 'three four']);
  expect(split('one two three', 8)).toEqual(['one two', 'three']);
  expect(split('abcdefgh', 3)).toEqual(['abc', 'def', 'gh']);
});

/** Half of a surrogate pair. */
const BROKEN = /\p{Surrogate}/u;

it('loses no character and breaks none', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme' }), fc.integer({ min: 2, max: 9 }), (text, longest) => {
      const pieces = split(text, longest);
      expect(pieces.every((piece) => piece.length <= longest && !BROKEN.test(piece))).toBe(true);
      expect(pieces.join('').replace(/\s/g, '')).toBe(text.replace(/\s/g, ''));
    }),
  );
});

it('gives each person a budget that fills again, and tells once that it is spent', () => {
  const budget = newBudget({ size: 2, perSecond: 1 });
  const taken = [0, 0, 0, 0].map((atMs) => budget.take(1, atMs));
  expect(taken).toEqual(['allowed', 'allowed', 'spent', 'out']);
  expect(budget.take(2, 0)).toBe('allowed');
  expect([1000, 1000, 1500].map((atMs) => budget.take(1, atMs))).toEqual(['allowed', 'spent', 'out']);
});

it.each([
  ['invite a cutter', { is: 'invite', role: 'cutter' }],
  ['Invite a lead.', { is: 'invite', role: 'lead' }],
  ['add another cook', { is: 'invite', role: 'cutter' }],
  ['remove Tobin 2', { is: 'remove', name: 'tobin 2' }],
  ['add 1.1 of trim', undefined],
  ['invite', undefined],
  ['trim 1.1', undefined],
])('reads %s', (line, wish) => {
  expect(readTeamWish(voice.language.team, line)).toEqual(wish);
});

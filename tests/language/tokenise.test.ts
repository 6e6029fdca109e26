// Lines cut into words, figures and marks: how phones, keyboards and recognisers write the same thing.
import { describe, expect, test } from 'vitest';
import { tokenise } from '../../src/language/tokenise.ts';

const texts = (line: string): readonly string[] => tokenise(line).tokens.map(({ text }) => text);

describe('equal to a plain "trim 1.1 lb"', () => {
  test.each([
    ['capitals', 'TRIM 1.1 LB'],
    ['no space before the unit', 'trim 1.1lb'],
    ['full-width letters and digits', 'ｔｒｉｍ １．１ ｌｂ'],
    ['a zero-width space within a word', 'tr\u200bim 1.1 lb'],
    ['a zero-width joiner within a figure', 'trim 1\u200d.1 lb'],
    ['a mark that turns the direction', '\u202etrim\u202c 1.1 lb'],
    ['a no-break space', 'trim\u00a01.1\u00a0lb'],
    ['an accent', 'trím 1.1 lb'],
    ['tabs', 'trim\t1.1\tlb'],
    ['a null', 'trim\u0000 1.1 lb'],
  ])('%s', (_title, line) => {
    expect(texts(line)).toEqual(['trim', '1.1', 'lb']);
  });
});

test.each([
  ["what's ribeye at", ['whats', 'ribeye', 'at']],
  ['what’s ribeye at', ['whats', 'ribeye', 'at']],
  ['12x16oz', ['12', 'x', '16', 'oz']],
  ['12×16oz', ['12', 'x', '16', 'oz']],
  ['14.2lb@7.40', ['14.2', 'lb', '@', '7.40']],
  ['$7.40/lb', ['$', '7.40', '/', 'lb']],
  ['rib-eye', ['rib', 'eye']],
  ['16-ounce', ['16', 'ounce']],
  ['½ lb', ['1', '/', '2', 'lb']],
  ['1½ lb', ['1', '1', '/', '2', 'lb']],
  ['fat −1.9', ['fat', '-1.9']],
  ['fat - 1.9', ['fat', '1.9']],
  ['trim 1,1', ['trim', '1.1']],
  ['', []],
  ['   ', []],
])('%s', (line, words) => {
  expect(texts(line)).toEqual(words);
});

test('what stands between two words is kept: a space, a comma, the end of a sentence', () => {
  const { tokens } = tokenise('trim 1.1, fat 1.9. done');
  expect(tokens.map(({ before }) => before)).toEqual(['stop', 'space', 'comma', 'space', 'stop']);
});

test('a question mark belongs to the word before it', () => {
  expect(tokenise('ribeye at 7.80? trim 1.1').tokens.map(({ asks }) => asks)).toEqual([
    false,
    false,
    true,
    false,
    false,
  ]);
});

test('each word is found again at its place in the line', () => {
  const line = 'Trim 1.1 lb, Fat 1.9 lb';
  for (const { text, from, to } of tokenise(line).tokens)
    expect(line.slice(from, to).toLowerCase()).toBe(text);
});

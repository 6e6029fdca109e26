// How runs of digits, dots and commas are read: the comma rule of the contract, and what is too unclear to be read.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readFigures } from '../../src/language/figures.ts';

const read = (run: string, mark: '.' | ',' = '.'): readonly string[] =>
  readFigures(run, mark).map(({ text, garbled }) => (garbled ? 'unclear' : text));

describe('where the point is the decimal mark', () => {
  test.each([
    ['14', ['14']],
    ['14.2', ['14.2']],
    ['.5', ['0.5']],
    ['1,1', ['1.1']],
    ['1,10', ['1.10']],
    ['1,234', ['1234']],
    ['1,234,567', ['1234567']],
    ['1,234.5', ['1234.5']],
    ['999,999.99', ['999999.99']],
    ['16,15,16', ['16', '15', '16']],
    ['16.2,15.9', ['16.2', '15.9']],
    ['1,2,3,4', ['1', '2', '3', '4']],
  ])('%s', (run, figures) => {
    expect(read(run)).toEqual(figures);
  });

  test.each(['1.2.3', '1,2345', '1234,567', '0,123', '01,234', '1,23,456', '1,234,5'])(
    '%s is not guessed',
    (run) => {
      expect(read(run)).toEqual(['unclear']);
    },
  );
});

describe('where the comma is the decimal mark', () => {
  test.each([
    ['14,2', ['14.2']],
    ['1.234', ['1234']],
    ['1.234,5', ['1234.5']],
    ['1.1', ['1.1']],
  ])('%s', (run, figures) => {
    expect(read(run, ',')).toEqual(figures);
  });
});

test('a grouped number is the number without its commas', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1000, max: 999_999_999 }), (value) => {
      expect(read(value.toLocaleString('en-US'))).toEqual([String(value)]);
    }),
  );
});

test('no run of digits, dots and commas gives a figure that is not in it, digit for digit', () => {
  fc.assert(
    fc.property(fc.stringMatching(/^[\d.,]{1,30}$/), (run) => {
      const digits = run.replace(/[.,]/g, '');
      const figures = readFigures(run, '.').filter(({ garbled }) => !garbled);
      const seen = figures.map(({ text }) => text.replace('.', '').replace(/^0(?=\d)/, ''));
      for (const figure of seen) expect(digits, run).toContain(figure);
    }),
    { numRuns: 2000 },
  );
});

test('a number of a thousand digits is not taken for one', () => {
  expect(read('9'.repeat(1000))).toEqual(['unclear']);
});

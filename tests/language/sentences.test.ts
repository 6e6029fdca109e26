// Every row of tests/language/sentences is read as it says; the known failures fail, so that a fix moves them out.
import { describe, expect, test } from 'vitest';
import { judge } from './english.ts';
import { fulfils, heldAgainst } from './fulfils.ts';
import { type Row, rowFiles, textOf } from './rows.ts';

const titleOf = (row: Row): string => `${textOf(row)}${row.unit === 'kg' ? ' (kg)' : ''}`;

function expectRead(row: Row): void {
  const { wanted, read } = heldAgainst(row, judge(textOf(row), row.unit));
  expect(read).toEqual(wanted);
}

/** A line that the program trips over is not read either. */
function isReadAsWanted(row: Row): boolean {
  try {
    return fulfils(row, judge(textOf(row), row.unit));
  } catch {
    return false;
  }
}

for (const { name, rows } of rowFiles()) {
  describe(name, () => {
    if (rows.length === 0) test.todo('has no rows');
    for (const row of rows) {
      if (name.endsWith('/known-failing'))
        test(`${titleOf(row)}: fails as yet, else it belongs in the file of its kind`, () => {
          expect(isReadAsWanted(row)).toBe(false);
        });
      else
        test(titleOf(row), () => {
          expectRead(row);
        });
    }
  });
}

test('no line stands in two rows with different wishes', () => {
  const wishes = new Map<string, string>();
  for (const { name, language, rows } of rowFiles())
    for (const row of rows) {
      const key = `${language} ${row.unit} ${row.said === undefined ? 'typed' : 'said'} ${textOf(row)}`;
      const wish = JSON.stringify({ ...row, typed: undefined, said: undefined });
      const known = wishes.get(key);
      if (known !== undefined) expect(wish, `${name}: ${textOf(row)}`).toBe(known);
      wishes.set(key, wish);
    }
});

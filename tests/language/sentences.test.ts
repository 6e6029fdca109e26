// Every row of tests/language/sentences is read as it says; the known failures fail, so that a fix moves them out.
import { describe, expect, test } from 'vitest';
import { judge } from './english.ts';
import { fulfils, heldAgainst } from './fulfils.ts';
import { rowFiles, textOf } from './rows.ts';

const KNOWN_FAILING = /\/known-failing$/;

for (const { name, rows } of rowFiles()) {
  describe(name, () => {
    if (rows.length === 0) test.todo('has no rows');
    for (const row of rows) {
      test(`${textOf(row)}${row.unit === 'kg' ? ' (kg)' : ''}`, () => {
        const judged = judge(textOf(row), row.unit);
        if (KNOWN_FAILING.test(name)) {
          expect(fulfils(row, judged), 'is read now: move it to the file of its kind').toBe(false);
          return;
        }
        const { wanted, read } = heldAgainst(row, judged);
        expect(read).toEqual(wanted);
      });
    }
  });
}

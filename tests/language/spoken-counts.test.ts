// Counts and minutes in words, alone and beside a size: each number belongs to its own slot.
import { expect, test } from 'vitest';
import { judge } from './english.ts';
import { fulfils } from './fulfils.ts';
import { expectAllRead } from './heard.ts';
import { range, spell } from './spelling.ts';

test('portions from 1 to 200', () => {
  expectAllRead(
    range(1, 200).map((amount) => ({ line: `${spell(amount)} portions`, amount })),
    { kind: 'portions', slot: 'count' },
  );
});

test('minutes from 1 to 480', () => {
  expectAllRead(
    range(1, 480).map((amount) => ({ line: `took ${spell(amount)} minutes`, amount })),
    { kind: 'labor', slot: 'minutes' },
  );
});

const SHOWN = 10;

/** Every count with every size from 3 to 32 ounces gives portions of both. */
function expectPortions(counts: readonly number[], said: (count: string, size: string) => string): void {
  const wrong = counts.flatMap((count) =>
    range(3, 32).flatMap((size) => {
      const line = said(spell(count), spell(size));
      const read = judge(line);
      const gives = [{ kind: 'portions', count, eachOz: String(size) }];
      return fulfils({ said: line, unit: 'lb', gives }, read) ? [] : [`"${line}": ${JSON.stringify(read)}`];
    }),
  );
  expect(wrong.slice(0, SHOWN), `${wrong.length} are read wrongly`).toEqual([]);
}

test('a count and a size with "at" between them', () => {
  expectPortions(range(1, 99), (count, size) => `${count} portions at ${size} ounces`);
});

test('a count and a size with "of" between them, each', () => {
  expectPortions(range(1, 99), (count, size) => `${count} portions of ${size} ounces each`);
});

test('a count directly before a size', () => {
  expectPortions(range(1, 19), (count, size) => `${count} ${size} ounce portions`);
});

test('more portions add', () => {
  const read = judge('twenty four more portions at twelve ounces');
  expect(read).toEqual({ entries: [{ kind: 'portions', mode: 'add', count: 24, eachOz: '12' }], ask: null });
});

// The remembered prices and credits: the newest that still holds.
import { describe, expect, test } from 'vitest';
import { type Ledger, type LedgerLine, newest, write } from '../../src/core/ledger.ts';
import { d, fc } from './property.ts';

const said = (entry: string, amount: string): LedgerLine => ({
  entry,
  at: `at ${entry}`,
  value: { amount: d(amount) },
});
const covering = (entry: string, covers: string): LedgerLine => ({ entry, at: `at ${entry}`, covers });
const ledger = (...lines: readonly LedgerLine[]): Ledger => lines.reduce(write, []);
const amountIn = (value: object | undefined): string | undefined =>
  value !== undefined && 'amount' in value ? String(value.amount) : undefined;
const holds = (lines: Ledger): string | undefined => amountIn(newest(lines)?.value);

describe('what holds', () => {
  test('nothing, where nothing was said', () => {
    expect(newest([])).toBeUndefined();
  });

  test('is the last one said, and since when', () => {
    const lines = ledger(said('e1', '7.40'), said('e2', '7.95'));
    expect(holds(lines)).toBe('7.95');
    expect(newest(lines)?.at).toBe('at e2');
  });

  test('is the one before, when the last is undone', () => {
    expect(holds(ledger(said('e1', '7.40'), said('e2', '7.95'), covering('e3', 'e2')))).toBe('7.4');
  });

  test('is nothing, when the only one is undone', () => {
    expect(holds(ledger(said('e1', '7.40'), covering('e2', 'e1')))).toBeUndefined();
  });

  test('is the correction', () => {
    expect(holds(ledger(said('e1', '7.40'), covering('e2', 'e1'), said('e2', '7.45')))).toBe('7.45');
  });

  test('is what was there again, when the correction is undone', () => {
    const lines = ledger(said('e1', '7.40'), covering('e2', 'e1'), said('e2', '7.45'), covering('e3', 'e2'));
    expect(holds(lines)).toBe('7.4');
  });

  test('is nothing, when a correction moved the value elsewhere', () => {
    expect(holds(ledger(said('e1', '7.40'), covering('e2', 'e1')))).toBeUndefined();
  });

  test('is the undone one again, when what took it back is taken back', () => {
    expect(holds(ledger(said('e1', '7.40'), covering('e2', 'e1'), covering('e3', 'e2')))).toBe('7.4');
  });

  test('stays, when something that is not there is undone', () => {
    expect(holds(ledger(said('e1', '7.40'), covering('e2', 'other')))).toBe('7.4');
  });
});

test('however many values were said, the last holds, and undoing the last few brings back those before', () => {
  fc.assert(
    fc.property(fc.integer({ min: 6, max: 80 }), fc.integer({ min: 1, max: 5 }), (count, undone) => {
      const values = Array.from({ length: count }, (_, index) => said(`e${index}`, `${index + 1}`));
      const undos = Array.from({ length: undone }, (_, index) =>
        covering(`u${index}`, `e${count - 1 - index}`),
      );
      expect(holds(ledger(...values))).toBe(`${count}`);
      expect(holds(ledger(...values, ...undos))).toBe(`${count - undone}`);
    }),
  );
});

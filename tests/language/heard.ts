// Many lines against what each must give, with a message that shows the first of those that went wrong.
import { expect } from 'vitest';
import type { KitchenUnit } from '../../src/core/quantity.ts';
import { judge } from './english.ts';

export interface Case {
  readonly line: string;
  /** The amount that was spelled. */
  readonly amount: number;
}

export interface Wanted {
  readonly kind: string;
  readonly slot: string;
  /** What one of the spoken unit is in the unit of the slot. */
  readonly scale?: number;
  readonly unit?: KitchenUnit;
}

const SHOWN = 10;

/** The amount of the only entry in the spoken unit, or why there is none. */
export function amountRead(line: string, { kind, slot, scale = 1, unit = 'lb' }: Wanted): number | string {
  const { entries, ask } = judge(line, unit);
  const [entry, more] = entries as readonly Readonly<Record<string, unknown>>[];
  if (ask !== null) return `asked: ${ask}`;
  if (entry === undefined || more !== undefined)
    return `${entries.length} entries: ${JSON.stringify(entries)}`;
  return entry['kind'] === kind && slot in entry ? Number(entry[slot]) / scale : JSON.stringify(entry);
}

/** Equal to the 8 significant digits that the contract compares. */
export const same = (read: number | string, amount: number): boolean =>
  typeof read === 'number' && Math.abs(read - amount) <= Math.abs(amount) * 1e-8;

/** Every line gives one entry of the kind, with the amount that was spelled. */
export function expectAllRead(cases: readonly Case[], wanted: Wanted): void {
  expect(cases.length).toBeGreaterThan(0);
  const wrong = cases.flatMap(({ line, amount }) => {
    const read = amountRead(line, wanted);
    return same(read, amount) ? [] : [`"${line}" should be ${amount}, read ${read}`];
  });
  expect(wrong.slice(0, SHOWN), `${wrong.length} of ${cases.length} are read wrongly`).toEqual([]);
}

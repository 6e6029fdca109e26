// Whether what was read is what a row wants.
import type { Judged } from '../../src/app/ports/words.ts';
import type { Row } from './rows.ts';

const AMOUNTS = new Set([
  'weightLb', 'pricePerLb', 'cost', 'creditPerLb', 'priceEach', 'eachOz', 'minutes', 'ratePerHour', 'costEach', 'foodCostPct',
]); // prettier-ignore

/** A decimal to the 8 significant digits that the contract compares. */
const figure = (amount: unknown): string =>
  typeof amount === 'string' && amount.trim() !== ''
    ? Number(amount).toPrecision(8)
    : `no amount: ${JSON.stringify(amount)}`;

/** An entry in a form in which equal entries are equal. */
function plain(entry: unknown): Readonly<Record<string, unknown>> {
  const slots = Object.entries(entry as Record<string, unknown>);
  return Object.fromEntries(
    slots
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([slot, value]) => [
        slot,
        AMOUNTS.has(slot) ? (Array.isArray(value) ? value.map(figure) : figure(value)) : value,
      ]),
  );
}

interface Outcome {
  readonly entries: readonly unknown[];
  readonly asks: boolean | 'either';
}

/** What the row wants and what was read, to be held against each other. */
export function heldAgainst(row: Row, judged: Judged): { wanted: Outcome; read: Outcome } {
  const asks: Outcome['asks'] = row.never === true ? 'either' : row.asks === true;
  const read = { entries: judged.entries.map(plain), asks: asks === 'either' ? asks : judged.ask !== null };
  return { wanted: { entries: (row.gives ?? []).map(plain), asks }, read };
}

export function fulfils(row: Row, judged: Judged): boolean {
  const { wanted, read } = heldAgainst(row, judged);
  return JSON.stringify(wanted) === JSON.stringify(read);
}

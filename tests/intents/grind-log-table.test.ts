// The record of grinding: every field of 9 CFR 320.1(b)(4), from what was said.
import { expect, test } from 'vitest';
import { decimal } from '../../src/core/decimal.ts';
import { decodeFact, encodeFact, type Fact, type Recorded } from '../../src/core/facts.ts';
import { type Lot, foldLot } from '../../src/core/lots.ts';
import { name } from '../../src/core/reply.ts';
import { fileOf } from '../../src/app/paper.ts';
import { GRIND_LOG_FIELDS, grindLogTable } from '../../src/intents/grind-log-table.ts';
import { csv } from '../../src/papers/sheets/csv.ts';
import { voice } from '../speech/given.ts';

const AT = '2026-03-06T15:00:00.000Z';
const facts: readonly Fact[] = [
  { type: 'ground', part: 'trim', grams: decimal('1360.77711'), cleanedAt: '2026-03-06T14:00:00.000Z', from: [{ test: 1, item: 'ribeye', grams: decimal('498.951607'), supplier: 'northfield' }] },
  { type: 'sourced', supplierLot: '4471', establishment: '245', produced: 'March 4' },
  { type: 'sourced', supplierLot: '4472', establishment: '245', supplier: 'westbrook' },
  { type: 'carriedOver', none: false, grams: decimal('453.59237') },
  { type: 'temperatureRead', degreesF: decimal('158'), what: 'burger', food: 'ground', stage: 'cook', limitF: decimal('165'), passed: false },
  { type: 'temperatureRead', degreesF: decimal('166'), what: 'burger', food: 'ground', stage: 'cook', limitF: decimal('165'), passed: true },
  { type: 'thermometerChecked', point: 'ice', degreesF: decimal('33') },
  { type: 'thermometerChecked', point: 'ice', degreesF: decimal('35') },
  { type: 'batchBegun' },
  { type: 'batchEnded' },
  { type: 'cleaned' },
  { type: 'lotEnded', how: 'used' },
]; // prettier-ignore
const log = (some: readonly Fact[]): readonly Recorded[] =>
  some.map((fact, index) => ({ entry: `m${index}.0`, speaker: 'ines', at: AT, lot: 1, fact }));

const SETTINGS = { unit: 'lb', timezone: 'America/Chicago' } as const;
const READER = { ...SETTINGS, currency: 'USD', seesCosts: false };

/** The file as somebody opens it: by the names of the columns, quotes and the mark at the front taken off. */
async function fileWith(lots: readonly Lot[]): Promise<readonly Readonly<Record<string, string>>[]> {
  const table = grindLogTable(lots, { settings: SETTINGS, format: 'csv', called: name });
  const maker = {
    sheet: (sheet: Parameters<typeof csv>[0]) => Promise.resolve(csv(sheet)),
    draw: () => Promise.reject(new Error('no picture')),
  };
  const file = fileOf(maker, table, { render: voice.render, reader: READER }, '');
  const [head = [], ...rows] = new TextDecoder()
    .decode(await file.bytes())
    .trimEnd()
    .split('\r\n')
    .map((row) => row.split(','));
  return rows.map((row) => Object.fromEntries(row.map((cell, at) => [head[at] ?? '', cell])));
}

// 9 CFR 320.1(b)(4): (i) establishment numbers of the suppliers, (ii) their lot numbers and production dates, (iii) the names of the
// materials with carry-over, (iv) date and time of each lot, (v) date and time of cleaning.
test('has every field, by the clock on the wall', async () => {
  const [row] = await fileWith([foldLot(log(facts))]);
  expect(row).toEqual({
    grind: '1', 'ground at (America/Chicago)': '2026-03-06 09:00', 'ground by': 'ines', material: 'trim', 'weight (lb)': '3', 'from cutting tests': 'ribeye #1',
    'weight in those tests (lb)': '1.1', suppliers: 'northfield; westbrook', 'supplier lot numbers': '4471; 4472', 'establishment numbers': '245', 'production dates': 'March 4',
    'carried over': '1 lb carried over from an earlier lot', 'grinder cleaned before': '2026-03-06 08:00', 'grinder cleaned after': '2026-03-06 09:00',
    'cook temperatures': '2026-03-06 09:00 batch 1 158 °F under the limit; 2026-03-06 09:00 batch 1 166 °F passed', 'batches passed': '1', batches: '2',
    'thermometer checks': '2026-03-06 09:00 ice bath 33 °F right; 2026-03-06 09:00 ice bath 35 °F off',
    'closed at': '2026-03-06 09:00', 'closed as': 'used up',
  }); // prettier-ignore
  expect(Object.keys(row ?? {})).toHaveLength(GRIND_LOG_FIELDS.length);
});

test('leaves empty what was not said', async () => {
  const [row] = await fileWith([foldLot(log([{ type: 'ground', part: 'trim', from: [] }]))]);
  for (const column of [
    'weight (lb)',
    'establishment numbers',
    'supplier lot numbers',
    'carried over',
    'grinder cleaned before',
    'closed at',
  ])
    expect([column, row?.[column]]).toEqual([column, '']);
});

test('runs nothing that a label said', async () => {
  const evil: Fact = {
    type: 'sourced',
    supplierLot: '=HYPERLINK("x")',
    establishment: '@SUM(1)',
    produced: '+1',
    supplier: '-2',
  };
  const table = [foldLot(log([{ type: 'ground', part: '=1+1', from: [] }, evil]))];
  const text = Object.values((await fileWith(table))[0] ?? {}).join('\n');
  expect(text).not.toMatch(/^"?[=+@-]/m);
});

test.each(facts.map((fact) => [fact.type, fact] as const))(
  '%s is read again as it was written',
  (_, fact) => {
    expect(decodeFact(encodeFact(fact))).toEqual(fact);
  },
);

test.each([
  '{"type":"temperatureRead","degreesF":"166","stage":"fried","passed":true}',
  '{"type":"temperatureRead","degreesF":166,"stage":"cook","passed":true}',
  '{"type":"ground","part":"trim"}',
  '{"type":"lotEnded","how":"sold"}',
  '{"type":"coolingBegun"}',
  '{"type":"thermometerChecked","point":"oven","degreesF":"32"}',
  '{"type":"chosen","setting":"groundCookF","value":"150"}',
])('%s is refused', (text) => {
  expect(() => decodeFact(text)).toThrow();
});

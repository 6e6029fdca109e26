// The record of grinding: every field of 9 CFR 320.1(b)(4), from what was said.
import { expect, test } from 'vitest';
import { decimal } from '../../src/core/decimal.ts';
import { decodeFact, encodeFact, type Fact, type Recorded } from '../../src/core/facts.ts';
import { GRIND_LOG_FIELDS, grindLogRows } from '../../src/core/grind-log.ts';
import { foldLot } from '../../src/core/lots.ts';

const AT = '2026-03-06T15:00:00.000Z';
const facts: readonly Fact[] = [
  { type: 'ground', part: 'trim', grams: decimal('1360.77711'), cleanedAt: '2026-03-06T14:00:00.000Z', from: [{ test: 1, item: 'ribeye', grams: decimal('498.951607'), supplier: 'northfield' }] },
  { type: 'sourced', supplierLot: '4471', establishment: '245', produced: 'March 4' },
  { type: 'sourced', supplierLot: '4472', establishment: '245', supplier: 'westbrook' },
  { type: 'carriedOver', none: false, grams: decimal('453.59237') },
  { type: 'temperatureRead', degreesF: decimal('158'), what: 'burger', food: 'ground', stage: 'cook', limitF: decimal('165'), passed: false },
  { type: 'temperatureRead', degreesF: decimal('166'), what: 'burger', food: 'ground', stage: 'cook', limitF: decimal('165'), passed: true },
  { type: 'cleaned' },
  { type: 'lotEnded', how: 'used' },
]; // prettier-ignore
const log = (some: readonly Fact[]): readonly Recorded[] =>
  some.map((fact, index) => ({ entry: `m${index}.0`, speaker: 'ines', at: AT, lot: 1, fact }));

test('has every field', () => {
  const [row] = grindLogRows([foldLot(log(facts))]);
  expect(row).toEqual({
    lot: '1', groundAt: AT, groundBy: 'ines', material: 'trim', weightLb: '3', from: 'ribeye #1', suppliers: 'northfield; westbrook',
    supplierLots: '4471; 4472', establishments: '245', productionDates: 'March 4', carriedOver: '1 lb', cleanedBefore: '2026-03-06T14:00:00.000Z',
    cleanedAfter: AT, readingsF: `${AT} 158 fail; ${AT} 166 pass`, batchesPassed: '1', batches: '1', closedAt: AT, closedAs: 'used',
  }); // prettier-ignore
  expect(Object.keys(row ?? {})).toEqual([...GRIND_LOG_FIELDS]);
});

test('leaves empty what was not said, and out what was taken back', () => {
  const [row] = grindLogRows([foldLot(log([{ type: 'ground', part: 'trim', from: [] }]))]);
  expect(row).toMatchObject({
    weightLb: '',
    establishments: '',
    supplierLots: '',
    carriedOver: '',
    cleanedBefore: '',
    closedAt: '',
  });
  const undone: Recorded = {
    entry: 'u',
    speaker: 'ines',
    at: AT,
    lot: 1,
    fact: { type: 'undone', target: 'm0.0', bare: true },
  };
  expect(grindLogRows([foldLot([...log(facts), undone])])).toEqual([]);
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

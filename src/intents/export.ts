// "export ribeye": the closed tests of an item as a table.
import { decimal, type Decimal } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import { type Column, fileName, fullName, type TablePaper, type Value } from '../core/paper.ts';
import { partsIn } from '../core/past-figures.ts';
import { date, money, name, number, percent, price, say, weight } from '../core/reply.ts';
import { called } from './called.ts';
import { type Intent, type PastTest, refused, type Scene, withPaper } from './intent.ts';
import { withItem } from './route.ts';

/** The most tests in a table. One more is read, so that it shows whether there are more. */
export const MOST_EXPORTED = 5000;

export const exportTests: Intent<'export'> = {
  slots: ['item', 'format'],
  decide: (scene, entry: EntryOf<'export'>) =>
    withItem(scene, entry, (item) => {
      const past = scene.past.filter((test) => test.item === item);
      if (past.length === 0) return refused(say('no-tests-yet', { item: name(item) }));
      const paper = tableOf(scene, { item, past, format: entry.format ?? 'csv' });
      const args = { item: name(item), tests: paper.rows.length, file: name(fullName(paper)) };
      return withPaper(paper, say(past.length > MOST_EXPORTED ? 'exported-newest' : 'exported', args));
    }),
};

type Wanted = Pick<TablePaper, 'format'> & { readonly item: string; readonly past: readonly PastTest[] };

function tableOf(scene: Scene, { item, past, format }: Wanted): TablePaper {
  const shown = past.slice(0, MOST_EXPORTED);
  const parts = [...new Set(shown.flatMap(({ figures = {} }) => partsIn(figures).map(([part]) => part)))];
  const all = columnsOf(scene, parts);
  return {
    ...{ is: 'table', name: fileName(item, 'tests'), format },
    columns: all.map(({ column }) => column),
    rows: shown.map((test) => all.map(({ value }) => value(test))),
  };
}

interface Filled {
  readonly column: Column;
  readonly value: (test: PastTest) => Value;
}

function columnsOf(scene: Scene, parts: readonly string[]): readonly Filled[] {
  const { unit, currency } = scene.kitchen.settings;
  const column = (id: string, value: Filled['value'], cost?: true): Filled => ({
    column: { label: say(id, { unit, currency }), ...(cost && { cost }) },
    value,
  });
  return [
    column('column-item', ({ item }) => name(item)),
    column('column-closed', ({ closedAt }) => closedAt && date(closedAt)),
    column('column-supplier', text('supplier', name)),
    column(
      'column-cutter',
      text('cutter', (speaker) => called(scene, speaker)),
    ),
    column('column-received', given('receivedGrams', weight)),
    ...parts.map((part): Filled => ({
      column: { label: say('column-part', { part: name(part), unit }) },
      value: partWeight(part),
    })),
    column('column-portions', given('portionGrams', weight)),
    column(
      'column-count',
      given('count', (value) => number(value, 0)),
    ),
    column('column-yield', given('yieldPct', percent)),
    column(
      'column-minutes',
      given('laborMinutes', (value) => number(value, 1)),
    ),
    column('column-price', given('pricePerLb', price), true),
    column('column-usable-cost', given('usableCostPerLb', price), true),
    column('column-labor', given('laborCost', money), true),
    column('column-packing', given('packingCost', money), true),
    column('column-loaded-cost', given('loadedCostPerLb', price), true),
    column('column-remark', ({ figures }) =>
      figures?.['flagged'] === undefined ? undefined : say('does-not-balance'),
    ),
  ];
}

const text =
  (key: string, as: (text: string) => Value): Filled['value'] =>
  ({ figures }) =>
    figures?.[key] === undefined ? undefined : as(figures[key]);

const given = (key: string, as: (value: Decimal) => Value): Filled['value'] =>
  text(key, (figure) => as(decimal(figure)));

const partWeight =
  (part: string): Filled['value'] =>
  ({ figures = {} }) => {
    const grams = partsIn(figures).find(([name]) => name === part)?.[1];
    return grams === undefined ? undefined : weight(decimal(grams));
  };

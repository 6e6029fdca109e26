// "export ribeye": the closed tests of an item as a table.
import { decimal } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import { type Column, fileName, fullName, type TablePaper, type Value } from '../core/paper.ts';
import { date, name, percent, price, say, weight } from '../core/reply.ts';
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

function tableOf({ kitchen: { settings } }: Scene, { item, past, format }: Wanted): TablePaper {
  const { unit, currency } = settings;
  const plain = (id: string): Column => ({ label: say(id, { unit }) });
  const cost = (id: string): Column => ({ label: say(id, { unit, currency }), cost: true });
  const columns = [
    ...['column-item', 'column-closed', 'column-received', 'column-portions', 'column-yield'].map(plain),
    ...['column-price', 'column-usable-cost'].map(cost),
    plain('column-remark'),
  ];
  const rows = past.slice(0, MOST_EXPORTED).map(rowOf);
  return { is: 'table', name: fileName(item, 'tests'), format, columns, rows };
}

function rowOf({ item, closedAt, figures = {} }: PastTest): readonly Value[] {
  const { receivedGrams, portionGrams, yieldPct, pricePerLb, usableCostPerLb, flagged } = figures;
  const given = <Value>(figure: string | undefined, as: (value: ReturnType<typeof decimal>) => Value) =>
    figure === undefined ? undefined : as(decimal(figure));
  return [
    name(item),
    closedAt === undefined ? undefined : date(closedAt),
    given(receivedGrams, weight),
    given(portionGrams, weight),
    given(yieldPct, percent),
    given(pricePerLb, price),
    given(usableCostPerLb, price),
    flagged === undefined ? undefined : say('does-not-balance'),
  ];
}

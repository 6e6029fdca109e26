// The rows that a turn changes in the read models: what differs between the kitchen before and after.
import type { Kitchen } from '../core/kitchen.ts';
import type { Lot } from '../core/lots.ts';
import { pastFigures } from '../core/past-figures.ts';
import type { Test } from '../core/test.ts';
import type { LotRow, TestRow, Views } from './ports/store.ts';

export function changedViews(before: Kitchen, after: Kitchen): Views {
  return {
    tests: [...after.tests.values()]
      .filter((test) => changesRow(before.tests.get(test.id), test))
      .map((test) => testRow(after, test)),
    lots:
      before.lots === after.lots
        ? []
        : [...after.lots.values()].filter((lot) => changesLotRow(before.lots.get(lot.id), lot)).map(lotRow),
    memory:
      before.memory === after.memory
        ? []
        : [...after.memory].filter(([key, ledger]) => before.memory.get(key) !== ledger),
    pools:
      before.pools === after.pools
        ? []
        : [...after.pools].filter(([item, pool]) => before.pools.get(item) !== pool),
    names: [...fresh('item', before.items, after.items), ...fresh('part', before.parts, after.parts)],
  };
}

const changesLotRow = (before: Lot | undefined, after: Lot): boolean => before?.status !== after.status;

const lotRow = ({ id, status, openedAt }: Lot): LotRow => ({ id, status, openedAt });

/** An open test's row says only that it is open: its weighings do not change it. */
function changesRow(before: Test | undefined, after: Test): boolean {
  if (before === after) return false;
  return (
    before === undefined ||
    after.status === 'closed' ||
    before.status !== after.status ||
    before.item !== after.item
  );
}

function* fresh(
  kind: 'item' | 'part',
  before: ReadonlySet<string>,
  after: ReadonlySet<string>,
): Generator<readonly ['item' | 'part', string]> {
  if (before !== after) for (const name of after) if (!before.has(name)) yield [kind, name];
}

export function testRow(kitchen: Kitchen, test: Test): TestRow {
  const { id, item, status, openedAt, closedAt } = test;
  return {
    id,
    item,
    status,
    openedAt,
    closedAt,
    figures: status === 'closed' ? pastFigures(kitchen, test) : undefined,
  };
}

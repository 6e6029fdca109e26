// What a kitchen needs in memory to go on.
import type { KitchenId, StoredKitchen } from '../../app/ports/store.ts';
import type { LotId, TestId } from '../../core/facts.ts';
import type { Connection } from './connection.ts';
import { factReader } from './fact-reader.ts';
import { query } from './query.ts';
import { settingsOf } from './rows.ts';
import { viewReader } from './view-reader.ts';

/** Undefined where the kitchen was never created. */
export function kitchenReader(db: Connection): (kitchen: KitchenId) => StoredKitchen | undefined {
  const { settings, open, last, openLots, lastLot } = kitchenQueries(db);
  const facts = factReader(db);
  const { memory, pools, names, questions } = viewReader(db);
  return (kitchen) => {
    const [found] = settings(kitchen);
    if (found === undefined) return undefined;
    return {
      settings: found,
      openTests: open(kitchen).map((test) => facts.ofTest(kitchen, test)),
      lastTest: last(kitchen)[0] ?? 0,
      lots: openLots(kitchen, kitchen).map((lot) => facts.ofLot(kitchen, lot)),
      lastLot: lastLot(kitchen)[0] ?? 0,
      memory: memory(kitchen),
      pools: pools(kitchen),
      names: names(kitchen),
      questions: questions(kitchen),
    };
  };
}

function kitchenQueries(db: Connection) {
  const settings = db.prepare<[KitchenId], { settings: string }>('SELECT settings FROM kitchen WHERE id = ?');
  const open = db.prepare<[KitchenId], { id: TestId }>(
    `SELECT id FROM test_row INDEXED BY test_row_by_status WHERE kitchen = ? AND status = 'open' ORDER BY id`,
  );
  // From the log, not from the rows, so that a number is never given twice.
  const last = db.prepare<[KitchenId], { last: TestId | null }>(
    'SELECT max(test) AS last FROM fact WHERE kitchen = ?',
  );
  const openLots = db.prepare<[KitchenId, KitchenId], { id: LotId }>(
    `SELECT id FROM lot_row INDEXED BY lot_row_open WHERE kitchen = ? AND status = 'open'
     UNION SELECT max(id) FROM lot_row WHERE kitchen = ? HAVING max(id) IS NOT NULL ORDER BY 1`,
  );
  const lastLot = db.prepare<[KitchenId], { last: LotId | null }>(
    'SELECT max(lot) AS last FROM fact INDEXED BY fact_by_lot WHERE kitchen = ? AND lot IS NOT NULL',
  );
  return {
    openLots: query(openLots, ({ id }) => id),
    lastLot: query(lastLot, (row) => row.last),
    settings: query(settings, (row) => settingsOf(row.settings)),
    open: query(open, ({ id }) => id),
    last: query(last, (row) => row.last),
  };
}

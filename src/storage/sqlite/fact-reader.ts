// The log, read in its order.
import type { KitchenId } from '../../app/ports/store.ts';
import type { LotId, Recorded, TestId } from '../../core/facts.ts';
import type { Connection } from './connection.ts';
import { guarded } from './faults.ts';
import { query } from './query.ts';
import { type FactRow, recordedOf } from './rows.ts';

const COLUMNS = 'seq, entry, speaker, at, test, lot, item, body';

/** How many facts of the whole log are read at once: an open cursor would block writing. */
const PAGE = 1000;

export function factReader(db: Connection) {
  const ofTest = db.prepare<[KitchenId, TestId], FactRow>(
    `SELECT ${COLUMNS} FROM fact WHERE kitchen = ? AND test = ? ORDER BY seq`,
  );
  const ofLot = db.prepare<[KitchenId, LotId], FactRow>(
    `SELECT ${COLUMNS} FROM fact INDEXED BY fact_by_lot WHERE kitchen = ? AND lot = ? ORDER BY seq`,
  );
  const ofSpeaker = db.prepare<[KitchenId, string, number], FactRow>(
    `SELECT * FROM (SELECT ${COLUMNS} FROM fact WHERE kitchen = ? AND speaker = ? ORDER BY seq DESC LIMIT ?)
     ORDER BY seq`,
  );
  return {
    ofTest: query(ofTest, recordedOf),
    ofLot: query(ofLot, recordedOf),
    ofSpeaker: query(ofSpeaker, recordedOf),
    all: wholeLog(db),
  };
}

/** The log page by page: between two pages a turn may be stored, and is read in its place. */
function wholeLog(db: Connection): (kitchen: KitchenId) => AsyncGenerator<Recorded> {
  const statement = db.prepare<[KitchenId, number, number], FactRow>(
    `SELECT ${COLUMNS} FROM fact NOT INDEXED WHERE kitchen = ? AND seq > ? ORDER BY seq LIMIT ?`,
  );
  const page = query(statement, (row) => ({ seq: row.seq, recorded: recordedOf(row) }));
  const after = (kitchen: KitchenId, seq: number) => guarded(db.name, () => page(kitchen, seq, PAGE));
  return async function* (kitchen) {
    let rows = after(kitchen, 0);
    while (rows.length > 0) {
      for (const { recorded } of rows) yield await Promise.resolve(recorded);
      rows = after(kitchen, rows.at(-1)?.seq ?? 0);
    }
  };
}

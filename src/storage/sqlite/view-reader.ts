// The read models and the standing questions, each in the order of its key.
import type { KitchenId, TestRow } from '../../app/ports/store.ts';
import type { LotId, TestId } from '../../core/facts.ts';
import type { Connection } from './connection.ts';
import { query, type Query } from './query.ts';
import { type KeyedRow, lotRowOf, type LotRowRow, memoryOf, nameOf, type NameRow, poolOf, questionOf, testRowOf, type TestRowRow } from './rows.ts'; // prettier-ignore

const TEST = 'id, item, status, opened_at, closed_at, figures';

export function viewReader(db: Connection) {
  const keyed = (columns: string, table: string) =>
    db.prepare<[KitchenId], KeyedRow>(`SELECT ${columns} FROM ${table} WHERE kitchen = ? ORDER BY 1`);
  return {
    tests: query(allTests(db), testRowOf),
    closed: closedTests(db),
    closedSince: closedSince(db),
    lots: query(allLots(db), lotRowOf),
    newestLots: query(newestLots(db), ({ id }) => id),
    memory: query(keyed('key, ledger AS body', 'memory_row'), memoryOf),
    pools: query(keyed('item AS key, pool AS body', 'pool_row'), poolOf),
    names: query(allNames(db), nameOf),
    questions: query(keyed('speaker AS key, body', 'question'), questionOf),
  };
}

const allTests = (db: Connection) =>
  db.prepare<[KitchenId], TestRowRow>(`SELECT ${TEST} FROM test_row WHERE kitchen = ? ORDER BY id`);

const allLots = (db: Connection) =>
  db.prepare<[KitchenId], LotRowRow>(
    'SELECT id, status, opened_at FROM lot_row WHERE kitchen = ? ORDER BY id',
  );

const newestLots = (db: Connection) =>
  db.prepare<[KitchenId, number], { id: LotId }>(
    'SELECT id FROM lot_row WHERE kitchen = ? ORDER BY id DESC LIMIT ?',
  );

function closedSince(db: Connection): Query<[KitchenId, string, number], TestId> {
  const statement = db.prepare<[KitchenId, string, number], { id: TestId }>(
    `SELECT id FROM test_row INDEXED BY test_row_by_closing WHERE kitchen = ? AND status = 'closed' AND closed_at >= ?
     ORDER BY closed_at DESC, id DESC LIMIT ?`,
  );
  return query(statement, ({ id }) => id);
}

const allNames = (db: Connection) =>
  db.prepare<[KitchenId], NameRow>('SELECT kind, name FROM name_row WHERE kitchen = ? ORDER BY kind, name');

/** Newest first; of two closed at once, the one opened later. */
function closedTests(db: Connection): Query<[KitchenId, string, number], TestRow> {
  const statement = db.prepare<[KitchenId, string, number], TestRowRow>(
    `SELECT ${TEST} FROM test_row WHERE kitchen = ? AND status = 'closed' AND item = ?
     ORDER BY closed_at DESC, id DESC LIMIT ?`,
  );
  return query(statement, testRowOf);
}

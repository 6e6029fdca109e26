// The read models: rows that are computed from the log and kept beside it.
import type { KitchenId, TestRow, Views } from '../../app/ports/store.ts';
import { toPlainJson } from '../../core/plain-json.ts';
import { encodePool } from '../../core/pool.ts';
import type { Connection } from './connection.ts';

/** Lays the given rows over what is there. */
export function viewWriter(db: Connection): (kitchen: KitchenId, views: Views) => void {
  const writeTest = testWriter(db);
  const writeLot = db.prepare(
    `INSERT INTO lot_row (kitchen, id, status, opened_at) VALUES (?, ?, ?, ?)
     ON CONFLICT (kitchen, id) DO UPDATE SET status = excluded.status, opened_at = excluded.opened_at`,
  );
  const writeMemory = keyedWriter(db, { table: 'memory_row', key: 'key', body: 'ledger' });
  const writePool = keyedWriter(db, { table: 'pool_row', key: 'item', body: 'pool' });
  const insertName = db.prepare<string[]>(
    'INSERT INTO name_row (kitchen, kind, name) VALUES (?, ?, ?) ON CONFLICT DO NOTHING',
  );
  return (kitchen, { tests, lots, memory, pools, names }) => {
    for (const test of tests) writeTest(kitchen, test);
    for (const { id, status, openedAt } of lots) writeLot.run(kitchen, id, status, openedAt);
    for (const [key, ledger] of memory) writeMemory(kitchen, key, ledger);
    for (const [item, pool] of pools) writePool(kitchen, item, encodePool(pool));
    for (const [kind, name] of names) insertName.run(kitchen, kind, name);
  };
}

/** Puts the given rows in the place of all that the kitchen has, in one transaction. */
export function viewReplacer(db: Connection): (kitchen: KitchenId, views: Views) => void {
  const clear = ['test_row', 'lot_row', 'memory_row', 'pool_row', 'name_row'].map((table) =>
    db.prepare<string>(`DELETE FROM ${table} WHERE kitchen = ?`),
  );
  const write = viewWriter(db);
  const transaction = db.transaction((kitchen: KitchenId, views: Views): void => {
    for (const statement of clear) statement.run(kitchen);
    write(kitchen, views);
  });
  return (kitchen, views) => {
    transaction.immediate(kitchen, views);
  };
}

function testWriter(db: Connection): (kitchen: KitchenId, test: TestRow) => void {
  const upsert = db.prepare(
    `INSERT INTO test_row (kitchen, id, item, status, opened_at, closed_at, figures) VALUES (?, ?, ?, ?, ?, ?, ?)
     ON CONFLICT (kitchen, id) DO UPDATE SET item = excluded.item, status = excluded.status,
       opened_at = excluded.opened_at, closed_at = excluded.closed_at, figures = excluded.figures
     WHERE (item, status, opened_at, closed_at, figures)
       IS NOT (excluded.item, excluded.status, excluded.opened_at, excluded.closed_at, excluded.figures)`,
  );
  return (kitchen, { id, item, status, openedAt, closedAt, figures }) => {
    const text = figures === undefined ? null : toPlainJson(figures);
    upsert.run(kitchen, id, item, status, openedAt, closedAt ?? null, text);
  };
}

/** For a table that keeps one JSON text under one key. */
function keyedWriter(db: Connection, at: { table: string; key: string; body: string }) {
  const upsert = db.prepare<string[]>(
    `INSERT INTO ${at.table} (kitchen, ${at.key}, ${at.body}) VALUES (?, ?, ?)
     ON CONFLICT (kitchen, ${at.key}) DO UPDATE SET ${at.body} = excluded.${at.body}
     WHERE ${at.body} IS NOT excluded.${at.body}`,
  );
  return (kitchen: KitchenId, key: string, value: object): void => {
    upsert.run(kitchen, key, toPlainJson(value));
  };
}

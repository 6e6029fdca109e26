// Version 4 keeps pools by supplier, cutter and part, and prices by supplier, beside those of an item. The tables are as they
// were; what is in them is made anew from the log: a test that was closed before must be in every pool that it can be taken out of.
import { evolve, type Kitchen, newKitchen } from '../../core/kitchen.ts';
import { toPlainJson } from '../../core/plain-json.ts';
import { encodePool } from '../../core/pool.ts';
import type { Connection } from './connection.ts';
import { type FactRow, recordedOf, settingsOf } from './rows.ts';

/** With statements of its own: those of the program of a later day may know tables that are not there yet. */
export function foldPoolsAnew(db: Connection): void {
  const kitchens = db.prepare<[], { id: string; settings: string }>('SELECT id, settings FROM kitchen').all();
  const writePool = db.prepare<string[]>(
    'INSERT OR REPLACE INTO pool_row (kitchen, item, pool) VALUES (?, ?, ?)',
  );
  const writeLedger = db.prepare<string[]>(
    'INSERT OR REPLACE INTO memory_row (kitchen, key, ledger) VALUES (?, ?, ?)',
  );
  for (const { id, settings } of kitchens) {
    const { pools, memory } = folded(db, id, newKitchen(settingsOf(settings)));
    for (const [key, pool] of pools) writePool.run(id, key, toPlainJson(encodePool(pool)));
    for (const [key, ledger] of memory) writeLedger.run(id, key, toPlainJson(ledger));
  }
}

function folded(db: Connection, id: string, empty: Kitchen): Kitchen {
  const facts = db.prepare<[string], FactRow>(
    'SELECT seq, entry, speaker, at, test, NULL AS lot, item, body FROM fact WHERE kitchen = ? ORDER BY seq',
  );
  let kitchen = empty;
  for (const row of facts.iterate(id)) kitchen = evolve(kitchen, recordedOf(row));
  return kitchen;
}

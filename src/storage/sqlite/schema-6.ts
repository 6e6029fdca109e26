// Version 6 remembers checks of the thermometer, which were in the log alone. The tables are as they were; what is remembered is made
// anew from the log.
import { evolve, newKitchen } from '../../core/kitchen.ts';
import type { Memory } from '../../core/memory.ts';
import { toPlainJson } from '../../core/plain-json.ts';
import type { Connection } from './connection.ts';
import { type FactRow, recordedOf, settingsOf } from './rows.ts';

/** With statements of its own: those of the program of a later day may know tables that are not there yet. */
export function foldMemoryAnew(db: Connection): void {
  const kitchens = db.prepare<[], { id: string; settings: string }>('SELECT id, settings FROM kitchen').all();
  const write = db.prepare<string[]>(
    'INSERT OR REPLACE INTO memory_row (kitchen, key, ledger) VALUES (?, ?, ?)',
  );
  for (const { id, settings } of kitchens)
    for (const [key, ledger] of rememberedIn(db, id, settings)) write.run(id, key, toPlainJson(ledger));
}

function rememberedIn(db: Connection, id: string, settings: string): Memory {
  const facts = db.prepare<[string], FactRow>(
    'SELECT seq, entry, speaker, at, test, lot, item, body FROM fact WHERE kitchen = ? ORDER BY seq',
  );
  let kitchen = newKitchen(settingsOf(settings));
  for (const row of facts.iterate(id)) kitchen = evolve(kitchen, recordedOf(row));
  return kitchen.memory;
}

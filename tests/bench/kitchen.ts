// A kitchen to measure with.
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import { openTable } from '../../src/app/turn.ts';
import { loadVoice } from '../../src/app/voice.ts';
import type { Store } from '../../src/app/ports/store.ts';
import type { Table } from '../../src/app/ports/table.ts';
import type { Settings } from '../../src/core/kitchen.ts';

export const KITCHEN = 'bench';
export const SETTINGS: Settings = {
  unit: 'lb',
  currency: 'USD',
  timezone: 'UTC',
  language: 'en',
  laborAvoidable: true,
};

/** When everything is asked. */
export const ASKED_AT = '2026-03-06T15:00:00.000Z';

/** Loaded once: the working folder is the project's. */
export const voice = loadVoice('intents', 'en');

export async function openBench(path: string): Promise<{ store: Store; table: Table }> {
  const store = await openSqlite(path);
  if (!(await store.kitchens()).includes(KITCHEN)) await store.create(KITCHEN, SETTINGS);
  return { store, table: await openTable({ store, id: KITCHEN, ...voice }) };
}

export const ask = (table: Table, id: string, text: string): ReturnType<Table['take']> =>
  table.take({ id, speaker: 'cook', at: ASKED_AT, text, role: 'owner' });

// Only wiring, as in main.ts: the store and the kitchens in it.
import { measuredStore, measuredTable } from './app/measured.ts';
import { type Metrics, UNMEASURED } from './app/ports/metrics.ts';
import type { KitchenId } from './app/ports/store.ts';
import type { Table } from './app/ports/table.ts';
import { openTable } from './app/turn.ts';
import type { Voice } from './app/voice.ts';
import type { Config } from './config.ts';
import type { Settings } from './core/kitchen.ts';
import type { Reply } from './core/reply.ts';
import { paperMaker } from './papers/maker.ts';
import { openSqlite } from './storage/sqlite/open.ts';
import type { SqliteStore } from './storage/sqlite/store.ts';

/** The first kitchen of a database: that of the settings, and of the chat in the terminal. */
export const FIRST_KITCHEN = 'kitchen';

export interface Wiring {
  readonly voice: Voice;
  readonly settings: Settings;
  readonly words: (...replies: readonly Reply[]) => string;
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
}

export interface Kitchens {
  readonly store: SqliteStore;
  readonly tables: ReadonlyMap<KitchenId, Table>;
  readonly first: Table;
  /** Whether the first one was made just now. */
  readonly isNew: boolean;
}

export async function openKitchens(
  { databasePath }: Pick<Config, 'databasePath'>,
  { voice, settings, hears }: Pick<Wiring, 'voice' | 'settings'> & { readonly hears?: string },
  metrics: Metrics = UNMEASURED,
): Promise<Kitchens> {
  const store = measuredStore(await openSqlite(databasePath), metrics);
  const isNew = await madeKitchen(store, FIRST_KITCHEN, settings);
  const tables = new Map<KitchenId, Table>();
  for (const id of await store.kitchens())
    tables.set(
      id,
      measuredTable(
        await openTable({ store, id, papers: paperMaker, ...voice, ...(hears && { hears }) }),
        metrics,
      ),
    );
  const first = tables.get(FIRST_KITCHEN);
  if (first === undefined) throw new Error('the first kitchen is not there');
  return { store, tables, first, isNew };
}

/** False where it is there already. */
export async function madeKitchen(store: SqliteStore, id: KitchenId, settings: Settings): Promise<boolean> {
  if ((await store.kitchens()).includes(id)) return false;
  await store.create(id, { ...settings, openedAt: new Date().toISOString() });
  return true;
}

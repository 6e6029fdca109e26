// The store under test, fresh for each case: opened on an empty database that has one kitchen, "home".
import { afterEach, beforeEach } from 'vitest';
import type { Store } from '../../../../src/app/ports/store.ts';
import type { Recorded } from '../../../../src/core/facts.ts';
import { SETTINGS } from './samples.ts';
import { wholeLog } from './whole-log.ts';

/** A database of its own, empty at first, that can be opened again after the store was closed. */
export interface Database {
  readonly open: () => Promise<Store>;
  readonly remove: () => Promise<void>;
}

export interface Opened {
  readonly store: Store;
  readonly reopen: () => Promise<void>;
  readonly wholeLog: (kitchen: string) => Promise<readonly Recorded[]>;
  /** All that the port tells of a kitchen, for comparing before and after. */
  readonly everythingOf: (kitchen: string) => Promise<unknown>;
}

export function openedForEach(newDatabase: () => Promise<Database>): Opened {
  let database: Database;
  let store: Store;
  beforeEach(async () => {
    database = await newDatabase();
    store = await database.open();
    await store.create('home', SETTINGS);
  });
  afterEach(async () => {
    await store.close();
    await database.remove();
  });
  return {
    get store() {
      return store;
    },
    reopen: async () => {
      await store.close();
      store = await database.open();
    },
    wholeLog: (kitchen) => wholeLog(store, kitchen),
    everythingOf: async (kitchen) => ({
      loaded: await store.load(kitchen),
      log: await wholeLog(store, kitchen),
      views: await store.views(kitchen),
    }),
  };
}

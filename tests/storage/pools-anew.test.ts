// A file of before pools were told apart by supplier, cutter and part gets them from its log.
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, it } from 'vitest';
import type { Fact } from '../../src/core/facts.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import { lb, portioned } from '../core/given.ts';
import { NO_VIEWS, recorded, SETTINGS, turn } from '../app/ports/store/samples.ts';
import { scratchFolder } from './scratch.ts';

it('makes the pools and the prices by supplier of tests that were closed before', async () => {
  const path = join(scratchFolder(), 'kitchen.db');
  const facts: readonly Fact[] = [
    {
      type: 'received',
      item: 'ribeye',
      grams: lb('10'),
      perLb: lb('1').div(lb('1')).times(6),
      supplier: 'harbor',
    },
    { type: 'weighed', part: 'trim', grams: lb('1'), mode: 'set' },
    portioned({ grams: lb('8') }),
    { type: 'closed', flagged: false },
  ];
  const store = await openSqlite(path);
  await store.create('home', SETTINGS);
  const all = facts.map((fact, index) => recorded(fact, { entry: `e${index}`, test: 1, item: 'ribeye' }));
  await store.append(turn('m1', { facts: all, views: NO_VIEWS }));
  await store.close();
  const db = new Database(path);
  // As version 3 was, with nothing of later ones.
  db.exec(
    `DROP TABLE lot_row; DROP INDEX fact_by_lot; DROP INDEX test_row_by_closing; ALTER TABLE fact DROP COLUMN lot; ALTER TABLE inbox DROP COLUMN is_told_of;`,
  );
  db.pragma('user_version = 3');
  db.close();

  const again = await openSqlite(path);
  const { pools, memory } = await again.views('home');
  await again.close();
  expect(pools.map(([key, { tests }]) => [key, tests])).toEqual([
    ['ribeye', 1],
    ['ribeye\ncutter\nlead', 1],
    ['ribeye\npart\ntrim', 1],
    ['ribeye\nsupplier\nharbor', 1],
  ]);
  expect(memory.map(([key]) => key)).toEqual(['price:ribeye', 'price:ribeye\nharbor']);
});

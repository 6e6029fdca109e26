// Every connection that writes is safe in a power cut: the library makes each new one less safe by default.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { connect, type Connection, setPragmas } from '../../src/storage/sqlite/connection.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import { scratchFolder } from './scratch.ts';

const FULL = 2;
const SAFE = {
  journal_mode: 'wal',
  synchronous: FULL,
  foreign_keys: 1,
  recursive_triggers: 1,
  temp_store: 2,
};

const pragmasOf = (db: Connection): unknown =>
  Object.fromEntries(Object.keys(SAFE).map((name) => [name, db.pragma(name, { simple: true })]));

it('is set on the store, when the file is new and when it is opened again', async () => {
  const path = join(scratchFolder(), 'kitchen.db');
  const seen: unknown[] = [];
  for (let times = 0; times < 3; times += 1)
    await (await openSqlite(path, { onOpen: (db) => seen.push(pragmasOf(db)) })).close();
  expect(seen).toEqual([SAFE, SAFE, SAFE]);
});

it('is set on every one of several connections to one file', () => {
  const path = join(scratchFolder(), 'kitchen.db');
  const open = [1, 2, 3].map(() => setPragmas(connect(path)));
  expect(open.map(pragmasOf)).toEqual([SAFE, SAFE, SAFE]);
  for (const db of open) db.close();
});

it('cannot be gone round: connections are made in one file only', () => {
  const folder = fileURLToPath(new URL('../../src/storage/sqlite', import.meta.url));
  const makers = readdirSync(folder).filter((name) =>
    readFileSync(join(folder, name), 'utf8').includes('new Database('),
  );
  expect(makers).toEqual(['connection.ts']);
});

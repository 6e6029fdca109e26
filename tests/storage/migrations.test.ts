// Files of earlier versions are brought forward whole or not at all; files that are not ours to change are left alone.
import { copyFileSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { type Migration, MIGRATIONS } from '../../src/storage/sqlite/migrations.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import { SETTINGS } from '../app/ports/store/samples.ts';
import { numberedTurn, wholeTurns } from './numbered-turns.ts';
import { contentOf, scratchFolder, startScript } from './scratch.ts';

const addColumn: Migration = (db) => db.exec(`ALTER TABLE kitchen ADD COLUMN place TEXT NOT NULL DEFAULT ''`);
const NEXT = [...MIGRATIONS, addColumn];

/** A file of a version, with three turns in it from version 1 on. */
async function fileOfVersion(version: number): Promise<string> {
  const path = join(scratchFolder(), 'kitchen.db');
  if (version < MIGRATIONS.length) {
    const db = new Database(path);
    // The program of today writes only files of its own version: those of earlier ones are kept as they wrote them.
    if (version > 0) db.exec(readFileSync(new URL(`version-${version}.sql`, import.meta.url), 'utf8'));
    db.close();
    return path;
  }
  const store = await openSqlite(path, { migrations: NEXT.slice(0, version) });
  await store.create('home', SETTINGS);
  for (const number of [1, 2, 3]) await store.append(numberedTurn(number));
  await store.close();
  return path;
}

function versionOf(path: string): unknown {
  const db = new Database(path, { readonly: true });
  const version = db.pragma('user_version', { simple: true });
  db.close();
  return version;
}

const tablesOf = (path: string): unknown => {
  const db = new Database(path, { readonly: true });
  const tables = db.prepare(`SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY 1`).pluck().all();
  db.close();
  return tables;
};

describe('forward', () => {
  it.each(NEXT.map((_, version) => version))(
    'from version %i to the newest, with all that was stored',
    async (version) => {
      const path = await fileOfVersion(version);
      const store = await openSqlite(path, { migrations: NEXT });
      if (version > 0) expect(await wholeTurns(store)).toBe(3);
      expect(await store.kitchens()).toEqual(version > 0 ? ['home'] : []);
      await store.close();
      expect(versionOf(path)).toBe(NEXT.length);
    },
  );

  it('opens a file of the newest version without a change of version', async () => {
    const path = await fileOfVersion(MIGRATIONS.length);
    await (await openSqlite(path)).close();
    expect(versionOf(path)).toBe(MIGRATIONS.length);
  });

  it('does the steps that went well, and leaves the file at the last of them where one fails', async () => {
    const path = await fileOfVersion(MIGRATIONS.length);
    const before = tablesOf(path);
    const failing: Migration = (db) =>
      db.exec(`CREATE TABLE half (id INTEGER) STRICT; UPDATE test_row SET nothing = 1`);
    await expect(openSqlite(path, { migrations: [...NEXT, failing] })).rejects.toThrow('nothing');
    expect(versionOf(path)).toBe(NEXT.length);
    expect(tablesOf(path)).toEqual(before);
  });

  it('refuses a step that leaves rows without their parents', async () => {
    const path = await fileOfVersion(1);
    const orphaning: Migration = (db) => db.exec(`INSERT INTO question VALUES ('nowhere', 'lead', '{}')`);
    await expect(openSqlite(path, { migrations: [...MIGRATIONS, orphaning] })).rejects.toThrow('parents');
    expect(versionOf(path)).toBe(MIGRATIONS.length);
  });

  it('checks the keys again when it is done', async () => {
    const path = await fileOfVersion(1);
    const keys: unknown[] = [];
    const onOpen = (db: Database.Database): number => keys.push(db.pragma('foreign_keys', { simple: true }));
    await (await openSqlite(path, { migrations: NEXT, onOpen })).close();
    expect(keys).toEqual([1]);
  });

  it('killed half-way, leaves the old version whole', async () => {
    const path = await fileOfVersion(MIGRATIONS.length);
    const script = startScript('migrating.script.ts', [path]);
    await script.ended;
    expect(script.lines).toEqual(['half-way']);
    const store = await openSqlite(path, { onOpen: (db) => { expect(db.pragma('integrity_check', { simple: true })).toBe('ok'); } }); // prettier-ignore
    expect(await wholeTurns(store)).toBe(3);
    await store.close();
    expect(versionOf(path)).toBe(MIGRATIONS.length);
    expect(tablesOf(path)).not.toContain('half');
  });
});

describe('not ours to change', () => {
  it('refuses a newer version and leaves the file as it was', async () => {
    const path = await fileOfVersion(NEXT.length);
    const before = contentOf(join(path, '..')).get('kitchen.db');
    await expect(openSqlite(path)).rejects.toMatchObject({ fault: 'newerVersion', place: path });
    expect(contentOf(join(path, '..')).get('kitchen.db')).toBe(before);
    expect(versionOf(path)).toBe(NEXT.length);
  });

  it('refuses it also where its last turns are still in the log beside it, and leaves both', async () => {
    const folder = scratchFolder();
    const live = join(scratchFolder(), 'kitchen.db');
    const path = join(folder, 'kitchen.db');
    const store = await openSqlite(live, { migrations: NEXT });
    await store.create('home', SETTINGS);
    await store.append(numberedTurn(1));
    for (const end of ['', '-wal']) copyFileSync(live + end, path + end);
    await store.close();
    const before = contentOf(folder);
    await expect(openSqlite(path)).rejects.toMatchObject({ fault: 'newerVersion' });
    expect(contentOf(folder)).toEqual(before);
    const newer = await openSqlite(path, { migrations: NEXT });
    expect(await wholeTurns(newer)).toBe(1);
    await newer.close();
  });

  it.each([0, 1, 99])(
    "refuses another program's database, of version %i, and leaves it as it was",
    async (version) => {
      const folder = scratchFolder();
      const path = join(folder, 'kitchen.db');
      const db = new Database(path);
      db.exec(`CREATE TABLE recipe (id INTEGER); PRAGMA user_version = ${version}`);
      db.close();
      const before = contentOf(folder);
      await expect(openSqlite(path)).rejects.toMatchObject({ fault: 'notADatabase', place: path });
      expect(contentOf(folder)).toEqual(before);
    },
  );
});

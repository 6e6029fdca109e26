// Forward from any earlier version to the newest, one transaction a step: killed half-way, the file is whole and
// of the version before. The version is SQLite's user_version, 0 in a new file.
import { StoreError } from '../../app/ports/store.ts';
import { type Connection, connectToRead } from './connection.ts';
import { codeOf } from './faults.ts';
import { SCHEMA_1 } from './schema.ts';
import { SCHEMA_2 } from './schema-2.ts';
import { SCHEMA_3 } from './schema-3.ts';
import { foldPoolsAnew } from './schema-4.ts';
import { SCHEMA_5 } from './schema-5.ts';
import { foldMemoryAnew } from './schema-6.ts';

/** Makes version n+1 of version n; its place in the list is n. */
export type Migration = (db: Connection) => void;

export const MIGRATIONS: readonly Migration[] = [
  (db) => {
    db.exec(SCHEMA_1);
  },
  (db) => {
    db.exec(SCHEMA_2);
  },
  (db) => {
    db.exec(SCHEMA_3);
  },
  foldPoolsAnew,
  (db) => {
    db.exec(SCHEMA_5);
  },
  foldMemoryAnew,
];

/** SQLite's application_id: "BLKH". It tells our files from another program's. */
const OURS = 0x424c4b48;

const numberOf = (db: Connection, pragma: string): number => Number(db.pragma(pragma, { simple: true }));

export function migrate(db: Connection, migrations: readonly Migration[]): void {
  // Rebuilding a table needs the keys unchecked, and they can't be switched inside a transaction.
  db.pragma('foreign_keys = OFF');
  for (let version = numberOf(db, 'user_version'); version < migrations.length; version += 1)
    db.transaction(() => {
      step(db, migrations, version);
    }).immediate();
  db.pragma('foreign_keys = ON');
}

function step(db: Connection, migrations: readonly Migration[], version: number): void {
  migrations[version]?.(db);
  const broken = db.prepare('PRAGMA foreign_key_check').all();
  if (broken.length > 0) throw new Error(`migration ${version} leaves rows without their parents`);
  db.pragma(`application_id = ${OURS}`);
  db.pragma(`user_version = ${version + 1}`);
}

/** Throws where the file is of a newer version or another program's. Changes nothing. */
export function refuseForeign(db: Connection, migrations: readonly Migration[]): void {
  const version = numberOf(db, 'user_version');
  const { tables } = db.prepare('SELECT count(*) AS tables FROM sqlite_schema').get() as { tables: number };
  const ours = version === 0 ? tables === 0 : numberOf(db, 'application_id') === OURS;
  if (!ours) throw new StoreError('notADatabase', db.name);
  if (version > migrations.length) throw new StoreError('newerVersion', db.name);
}

/**
 * The same check before the file is opened to write: closing a writing connection may already fold the
 * write-ahead log into the file. A file that a killed process left half-written in the old journal mode can't be
 * read without repair; it is checked again when it is open.
 */
export function refuseForeignFile(path: string, migrations: readonly Migration[]): void {
  const db = connectToRead(path);
  try {
    refuseForeign(db, migrations);
  } catch (error) {
    if (!codeOf(error).startsWith('SQLITE_READONLY')) throw error;
  } finally {
    db.close();
  }
}

// The one way to a connection: every one gets the same pragmas, because better-sqlite3 sets synchronous to NORMAL
// on each new connection in WAL mode, which loses the last commits in a power cut.
import Database from 'better-sqlite3';
import { StoreError } from '../../app/ports/store.ts';

export type Connection = Database.Database;

export const MEMORY = ':memory:';

/** How long a statement waits for another process, with the event loop blocked: one writer is enforced, so it is rare. */
const BUSY_MS = 2000;

/**
 * How many pages the log gathers before it is folded into the file. A turn rewrites the same few pages as the one
 * before, so that a long log costs fewer writes; 16 MB of it are read back in a moment after a crash.
 */
const FOLDED_PAGES = 4000;

/** A connection that writes. Nothing in the file is changed yet. */
export const connect = (path: string, timeout = BUSY_MS): Connection => new Database(path, { timeout });

/** A connection that only looks: closing it does not fold the write-ahead log into the file. */
export const connectToRead = (path: string): Connection =>
  new Database(path, { readonly: true, fileMustExist: true, timeout: BUSY_MS });

/** Makes the connection safe to write through. The journal mode is kept in the file, the rest is the connection's. */
export function setPragmas(db: Connection): Connection {
  const mode: unknown = db.pragma('journal_mode = WAL', { simple: true });
  if (mode !== 'wal' && mode !== 'memory') throw new StoreError('unavailable', db.name);
  db.pragma('synchronous = FULL');
  db.pragma(`wal_autocheckpoint = ${FOLDED_PAGES}`);
  db.pragma('foreign_keys = ON');
  db.pragma('temp_store = MEMORY');
  // Else INSERT OR REPLACE would get past the triggers that forbid deleting.
  db.pragma('recursive_triggers = ON');
  // A page that was damaged on the disk is refused when it is read, not taken for rows.
  db.pragma('cell_size_check = ON');
  return db;
}

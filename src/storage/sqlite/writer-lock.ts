// One writing process a database, enforced by a lock of the operating system on a file beside it: SQLite's own lock,
// held by a transaction that stays open. It falls with the process, also by kill -9, and never goes stale, as a
// file with a process number does. Readers (a backup) are not kept out.
import { StoreError } from '../../app/ports/store.ts';
import { connect } from './connection.ts';
import { codeOf } from './faults.ts';

export interface WriterLock {
  readonly release: () => void;
}

/** Throws `inUse` where another connection holds it, in this process or another. The empty file stays behind. */
export function lockForWriting(path: string): WriterLock {
  const db = connect(`${path}.lock`, 0);
  try {
    // Nothing is ever written here: without this, SQLite would put a journal beside the lock.
    db.pragma('journal_mode = MEMORY');
    db.exec('BEGIN EXCLUSIVE');
  } catch (error) {
    db.close();
    throw codeOf(error).startsWith('SQLITE_BUSY') ? new StoreError('inUse', path, { cause: error }) : error;
  }
  return {
    release: () => {
      db.close();
    },
  };
}

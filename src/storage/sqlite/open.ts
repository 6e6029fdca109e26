// Opens a kitchen's file: its folder made, the writer's lock taken, foreign and newer files refused unchanged, the
// tables brought to this version. In that order.
import { existsSync } from 'node:fs';
import { StoreError } from '../../app/ports/store.ts';
import { connect, type Connection, MEMORY, setPragmas } from './connection.ts';
import { codeOf, guarded, promised } from './faults.ts';
import { refuseEmptied, refuseReadOnly, settle } from './folder.ts';
import { type Migration, migrate, MIGRATIONS, refuseForeign, refuseForeignFile } from './migrations.ts';
import { type SqliteStore, storeOn } from './store.ts';
import { lockForWriting } from './writer-lock.ts';

export interface SqliteOptions {
  /** The UTC instant, ISO 8601. */
  readonly clock?: () => string;
  /** For tests: other versions than ours, and a look at the open connection. */
  readonly migrations?: readonly Migration[];
  readonly onOpen?: (db: Connection) => void;
}

/** The store in a file, or with ":memory:" one that is gone with the process. Rejects with a StoreError where it can't. */
export const openSqlite = (path: string, options: SqliteOptions = {}): Promise<SqliteStore> =>
  promised(path, () => {
    if (path === MEMORY) return openAt(path, options, () => undefined);
    const place = settle(path);
    refuseReadOnly(place);
    const lock = lockForWriting(place);
    return orElse(lock.release, () => openFile(place, options, lock.release));
  });

function openFile(path: string, options: SqliteOptions, release: () => void): SqliteStore {
  refuseEmptied(path);
  const { migrations = MIGRATIONS } = options;
  if (existsSync(path)) guarded(path, () => { sensible(path, () => { refuseForeignFile(path, migrations); }); }); // prettier-ignore
  return openAt(path, options, release);
}

function openAt(path: string, options: SqliteOptions, release: () => void): SqliteStore {
  const { clock = () => new Date().toISOString(), migrations = MIGRATIONS, onOpen } = options;
  const db = connect(path);
  const undo = (): void => void db.close();
  return orElse(undo, () => {
    sensible(path, () => {
      refuseForeign(db, migrations);
      setPragmas(db);
    });
    migrate(db, migrations);
    onOpen?.(db);
    return sensible(path, () => storeOn(db, { clock, release }));
  });
}

/**
 * A file of ours that lacks our tables, or has a format number that no SQLite writes, is damaged: SQLite itself sees only
 * a statement that makes no sense.
 */
function sensible<Result>(path: string, work: () => Result): Result {
  try {
    return work();
  } catch (error) {
    throw codeOf(error) === 'SQLITE_ERROR' ? new StoreError('damaged', path, { cause: error }) : error;
  }
}

/** What the work gives; where it throws, what was taken before is given back. */
function orElse<Result>(giveBack: () => void, work: () => Result): Result {
  try {
    return work();
  } catch (error) {
    giveBack();
    throw error;
  }
}

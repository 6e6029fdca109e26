// The trouble of SQLite and of the file system, classed. A code that is not listed is a bug and passes through.
import { StoreError, type StoreFault } from '../../app/ports/store.ts';

/** By the beginning of the code, the special case before the general one. */
const FAULTS: readonly (readonly [code: string, fault: StoreFault])[] = [
  ['SQLITE_CORRUPT', 'damaged'],
  ['SQLITE_IOERR_CORRUPTFS', 'damaged'],
  ['SQLITE_NOTADB', 'notADatabase'],
  ['SQLITE_FULL', 'full'],
  // The shared-memory file could not be made as large as it must be: a full disk says it this way first.
  ['SQLITE_IOERR_SHMSIZE', 'full'],
  ['ENOSPC', 'full'],
  ['EDQUOT', 'full'],
  ['SQLITE_READONLY', 'readOnly'],
  ['EROFS', 'readOnly'],
  ['EACCES', 'readOnly'],
  ['EPERM', 'readOnly'],
  ['SQLITE_BUSY', 'inUse'],
  ['SQLITE_CANTOPEN', 'unavailable'],
  ['SQLITE_IOERR', 'unavailable'],
  ['SQLITE_PERM', 'unavailable'],
  ['SQLITE_PROTOCOL', 'unavailable'],
  ['ENOENT', 'unavailable'],
  ['ENOTDIR', 'unavailable'],
  ['EISDIR', 'unavailable'],
  ['EEXIST', 'unavailable'],
  ['ENAMETOOLONG', 'unavailable'],
  ['ELOOP', 'unavailable'],
  ['EIO', 'unavailable'],
];

/** The error as a StoreError where it is the store's own trouble, else as it is. */
export function classed(error: unknown, place: string): unknown {
  if (error instanceof StoreError) return error;
  const code = codeOf(error);
  const found = FAULTS.find(([start]) => code.startsWith(start));
  return found === undefined ? error : new StoreError(found[1], place, { cause: error });
}

export function codeOf(error: unknown): string {
  const code: unknown = error instanceof Error && 'code' in error ? error.code : undefined;
  return typeof code === 'string' ? code : '';
}

/** What the work gives; its trouble classed. */
export function guarded<Result>(place: string, work: () => Result): Result {
  try {
    return work();
  } catch (error) {
    throw classed(error, place);
  }
}

/** The same for a port that is async, over a database that is not. */
export function promised<Result>(place: string, work: () => Result): Promise<Result> {
  return new Promise((resolve) => {
    resolve(guarded(place, work));
  });
}

/** What was stored as text, read back. Text that does not read back is damage, whatever complains of it. */
export function readBack<Result>(place: string, decode: () => Result): Result {
  try {
    return decode();
  } catch (error) {
    throw new StoreError('damaged', place, { cause: error });
  }
}

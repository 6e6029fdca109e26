// The file's place on the disk, before SQLite sees it.
import {
  accessSync,
  closeSync,
  constants,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  realpathSync,
  statSync,
} from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { StoreError } from '../../app/ports/store.ts';

/** The one true path of a file that may not exist yet, links resolved, its folder made: two names of it must not get two locks. */
export function settle(path: string): string {
  const absolute = resolve(path);
  const folder = dirname(absolute);
  const made = mkdirSync(folder, { recursive: true });
  if (made !== undefined) syncFolder(dirname(made));
  return existsSync(absolute) ? realpathSync(absolute) : join(realpathSync(folder), basename(absolute));
}

/** Throws where the file or its folder can't be written: SQLite would open it all the same and fail at the first entry. */
export function refuseReadOnly(path: string): void {
  accessSync(dirname(path), constants.W_OK);
  if (existsSync(path)) accessSync(path, constants.R_OK | constants.W_OK);
}

/** An emptied file beside a log that is not: SQLite would take the file for a new one and delete the log. */
export function refuseEmptied(path: string): void {
  if (sizeOf(path) === 0 && (sizeOf(`${path}-wal`) ?? 0) > 0) throw new StoreError('damaged', path);
}

const sizeOf = (path: string): number | undefined => statSync(path, { throwIfNoEntry: false })?.size;

/** Makes the names in a folder durable. Windows has no such call and needs none. */
export function syncFolder(folder: string): void {
  if (process.platform !== 'win32') syncPath(folder);
}

export function syncPath(path: string): void {
  const file = openSync(path, 'r');
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

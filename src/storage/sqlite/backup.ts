// A checked copy of a kitchen's file, made while the chat runs. The copy is one file by itself, and has its name
// only once it is whole, checked and on the disk.
import { existsSync, renameSync, rmSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { StoreError } from '../../app/ports/store.ts';
import { connect, type Connection, connectToRead } from './connection.ts';
import { classed, codeOf, guarded } from './faults.ts';
import { settle, syncFolder, syncPath } from './folder.ts';

/** Rejects with a StoreError: `exists` where the target is there already, `damaged` where the source is not sound. */
export async function backupSqlite(source: string, target: string): Promise<void> {
  try {
    const place = settle(target);
    if (existsSync(place)) throw new StoreError('exists', target);
    if (!existsSync(source)) throw new StoreError('unavailable', source);
    await copyTo(resolve(source), place);
  } catch (error) {
    throw classed(error, target);
  }
}

async function copyTo(source: string, target: string): Promise<void> {
  const partial = `${target}.partial`;
  removeWithLogs(partial);
  try {
    await copySnapshot(source, partial);
    checkCopy(partial, source);
    syncPath(partial);
    renameSync(partial, target);
    syncFolder(dirname(target));
  } finally {
    removeWithLogs(partial);
  }
}

/** With what a killed backup left beside it. */
function removeWithLogs(path: string): void {
  for (const end of ['', '-journal', '-wal', '-shm']) rmSync(path + end, { force: true });
}

/** Held in one read transaction, so that a busy writer can't make it begin again and again. */
async function copySnapshot(source: string, partial: string): Promise<void> {
  const db = guarded(source, () => connectToRead(source));
  try {
    guarded(source, () => {
      db.exec('BEGIN');
      db.prepare('SELECT count(*) FROM sqlite_schema').get();
    });
    await db.backup(partial);
  } finally {
    db.close();
  }
}

/** Folds the copy into one file without a log beside it, and looks for damage that was copied along. */
function checkCopy(partial: string, source: string): void {
  const copy = connect(partial);
  try {
    copy.pragma('synchronous = FULL');
    copy.pragma('journal_mode = DELETE');
    if (!isSound(copy)) throw new StoreError('damaged', source);
  } catch (error) {
    // Damage may also keep the check from running; then it is the source's, not the copy's.
    throw codeOf(error).startsWith('SQLITE_CORRUPT') ? classed(error, source) : error;
  } finally {
    copy.close();
  }
}

function isSound(db: Connection): boolean {
  const verdict: unknown = db.pragma('integrity_check', { simple: true });
  return verdict === 'ok' && db.prepare('PRAGMA foreign_key_check').all().length === 0;
}

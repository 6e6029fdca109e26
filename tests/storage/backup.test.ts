// A backup is the kitchen as it was at one moment, checked, in one file, and never in the place of another file.
import { once } from 'node:events';
import { copyFileSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { type Connection, connectToRead } from '../../src/storage/sqlite/connection.ts';
import { backupSqlite } from '../../src/storage/sqlite/backup.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import { SETTINGS } from '../app/ports/store/samples.ts';
import { numberedTurn, wholeTurns } from './numbered-turns.ts';
import { kill, scratchFolder, startScript } from './scratch.ts';

interface Places {
  readonly source: string;
  readonly folder: string;
  readonly target: string;
}

async function kitchenWith(turns: number): Promise<Places> {
  const source = join(scratchFolder(), 'kitchen.db');
  const store = await openSqlite(source);
  await store.create('home', SETTINGS);
  for (let number = 1; number <= turns; number += 1) await store.append(numberedTurn(number));
  await store.close();
  const folder = join(scratchFolder(), 'copies');
  return { source, folder, target: join(folder, 'monday.db') };
}

function rowsOf(path: string): unknown {
  const db = connectToRead(path);
  const tables = db
    .prepare<[], { name: string }>(`SELECT name FROM sqlite_schema WHERE type = 'table'`)
    .all();
  const rows = tables.map(({ name }) => [name, db.prepare(`SELECT * FROM ${name} ORDER BY 1, 2`).all()]);
  const versions = [db.pragma('user_version'), db.pragma('application_id')];
  db.close();
  return { rows, versions };
}

it('is the same to the last row, in one file, and opens as a store', async () => {
  const { source, folder, target } = await kitchenWith(30);
  await backupSqlite(source, target);
  expect(readdirSync(folder)).toEqual(['monday.db']);
  expect(rowsOf(target)).toEqual(rowsOf(source));
  const restored = await openSqlite(target);
  expect(await wholeTurns(restored)).toBe(30);
  expect(await restored.append(numberedTurn(31))).toBe('stored');
  await restored.close();
});

it('leaves the source as it was', async () => {
  const { source, target } = await kitchenWith(3);
  const before = readFileSync(source);
  await backupSqlite(source, target);
  expect(readFileSync(source).equals(before)).toBe(true);
});

it('holds what the open store has not yet folded into its file', async () => {
  const { source, target } = await kitchenWith(3);
  const store = await openSqlite(source);
  await store.append(numberedTurn(4));
  await backupSqlite(source, target);
  await store.append(numberedTurn(5));
  await store.close();
  const restored = await openSqlite(target);
  expect(await wholeTurns(restored)).toBe(4);
  await restored.close();
});

it('is whole while another process writes without a pause, which it does not stop', async () => {
  const { source, target } = await kitchenWith(0);
  const writer = startScript('appending.script.ts', [source]);
  await writer.begun;
  const before = writer.lines.length;
  for (const day of ['a', 'b', 'c']) await backupSqlite(source, `${target}.${day}`);
  const after = writer.lines.length;
  await kill(writer);
  expect(after).toBeGreaterThan(before);
  const restored = await openSqlite(`${target}.c`);
  expect(await wholeTurns(restored)).toBeGreaterThanOrEqual(before);
  await restored.close();
});

it.each(['notes', ''])('refuses to take the place of another file, with %j in it', async (content) => {
  const { source, folder, target } = await kitchenWith(1);
  mkdirSync(folder);
  writeFileSync(target, content);
  await expect(backupSqlite(source, target)).rejects.toMatchObject({ fault: 'exists', place: target });
  expect(readFileSync(target, 'utf8')).toBe(content);
});

it('refuses to take the place of its own source', async () => {
  const { source } = await kitchenWith(1);
  await expect(backupSqlite(source, source)).rejects.toMatchObject({ fault: 'exists' });
});

it.each([
  ['an index', 'fact_by_speaker'],
  ['a table', 'fact'],
])('refuses to copy damage in %s, and leaves no copy', async (_, name) => {
  const { source, folder, target } = await kitchenWith(200);
  damage(source, name);
  await expect(backupSqlite(source, target)).rejects.toMatchObject({ fault: 'damaged', place: source });
  expect(readdirSync(folder)).toEqual([]);
});

/** Overwrites some cells of the last page of a table or an index. */
function damage(path: string, name: string): void {
  const db: Connection = connectToRead(path);
  const page = Number(db.prepare('SELECT max(pageno) FROM dbstat WHERE name = ?').pluck().get(name));
  db.close();
  const content = readFileSync(path);
  content.fill(0x5a, page * 4096 - 400, page * 4096 - 300);
  writeFileSync(path, content);
}

it('says what is missing', async () => {
  const { source, folder, target } = await kitchenWith(1);
  const none = join(source, '..', 'none.db');
  await expect(backupSqlite(none, target)).rejects.toMatchObject({ fault: 'unavailable', place: none });
  expect(readdirSync(folder)).toEqual([]);
});

it('refuses to copy what is no database', async () => {
  const { folder, target } = await kitchenWith(1);
  const text = join(scratchFolder(), 'notes.txt');
  writeFileSync(text, 'ribeye 14.2 lb at 7.40\n'.repeat(100));
  await expect(backupSqlite(text, target)).rejects.toMatchObject({ fault: 'notADatabase', place: text });
  expect(readdirSync(folder)).toEqual([]);
});

it('is not disturbed by what a killed one left', async () => {
  const { source, folder, target } = await kitchenWith(3);
  const stale = await kitchenWith(20);
  const store = await openSqlite(stale.source);
  await store.append(numberedTurn(21));
  mkdirSync(folder);
  copyFileSync(stale.source, `${target}.partial`);
  copyFileSync(`${stale.source}-wal`, `${target}.partial-wal`);
  await store.close();
  await backupSqlite(source, target);
  expect(readdirSync(folder)).toEqual(['monday.db']);
  expect(rowsOf(target)).toEqual(rowsOf(source));
});

it('killed, leaves no half of a file under the name', async () => {
  const { source, folder, target } = await kitchenWith(2000);
  mkdirSync(folder);
  for (const delay of [0, 2, 5, 10]) {
    const script = startScript('backup.script.ts', [source, `${target}.${delay}`]);
    expect(await script.begun).toBe('begun');
    setTimeout(() => script.process.kill('SIGKILL'), delay);
    await once(script.process, 'close');
    const names = readdirSync(folder);
    // Either it was killed in time, or the copy has its name and is whole.
    if (names.includes(`monday.db.${delay}`)) continue;
    await backupSqlite(source, `${target}.${delay}`);
    expect(rowsOf(`${target}.${delay}`)).toEqual(rowsOf(source));
  }
  expect(readdirSync(folder).filter((name) => name.includes('partial'))).toEqual([]);
});

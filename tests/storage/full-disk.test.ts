// A full disk or a failing write stores nothing by halves and loses nothing; with space again, it goes on.
import { join } from 'node:path';
import { expect, it } from 'vitest';
import type { Store } from '../../src/app/ports/store.ts';
import type { Connection } from '../../src/storage/sqlite/connection.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import { SETTINGS } from '../app/ports/store/samples.ts';
import { numberedTurn, wholeTurns } from './numbered-turns.ts';
import { scratchFolder, started } from './scratch.ts';

async function withDisk(path: string): Promise<{ store: Store; setPages: (extra: number) => void }> {
  let db: Connection | undefined;
  const store = await openSqlite(path, { onOpen: (opened) => (db = opened) });
  await store.create('home', SETTINGS);
  const setPages = (extra: number): void => {
    const pages = Number(db?.pragma('page_count', { simple: true }));
    db?.pragma(`max_page_count = ${pages + extra}`);
  };
  return { store, setPages };
}

/** Stores turns from a number on until one fails; gives the number of that one, and its error. */
async function appendUntilFull(store: Store, from: number): Promise<{ failed: number; error: unknown }> {
  for (let number = from; ; number += 1) {
    try {
      await store.append(numberedTurn(number));
    } catch (error) {
      return { failed: number, error };
    }
  }
}

it('says that the disk is full, keeps what was stored, and goes on when there is space', async () => {
  const path = join(scratchFolder(), 'kitchen.db');
  const { store, setPages } = await withDisk(path);
  let next = 1;
  for (const extra of [0, 1, 2, 3, 5, 8]) {
    setPages(extra);
    const { failed, error } = await appendUntilFull(store, next);
    expect(error).toMatchObject({ fault: 'full', place: path });
    expect(await wholeTurns(store)).toBe(failed - 1);
    await expect(store.append(numberedTurn(failed))).rejects.toMatchObject({ fault: 'full' });
    setPages(1000);
    expect(await store.append(numberedTurn(failed))).toBe('stored');
    next = failed + 1;
  }
  await store.close();
  const reopened = await openSqlite(path);
  expect(await wholeTurns(reopened)).toBe(next - 1);
  await reopened.close();
});

it('creates no kitchen on a full disk', async () => {
  const path = join(scratchFolder(), 'kitchen.db');
  const { store, setPages } = await withDisk(path);
  setPages(0);
  const huge = { ...SETTINGS, timezone: 'x'.repeat(50_000) };
  await expect(store.create('annex', huge)).rejects.toMatchObject({ fault: 'full' });
  setPages(1000);
  expect(await store.kitchens()).toEqual(['home']);
  await store.close();
});

it.skipIf(process.platform === 'win32')(
  'survives writes that the system refuses, in a process of its own',
  async () => {
    const path = join(scratchFolder(), 'kitchen.db');
    const script = fileOf('appending.script.ts');
    // No file may grow beyond 800 blocks of 512 bytes: a write in the middle of a commit fails.
    const command = `ulimit -f 800; exec "${process.execPath}" --import tsx "${script}" "${path}"`;
    const child = started('sh', ['-c', command]);
    await child.ended;
    expect(child.lines.at(-1)).toMatch(/^(unavailable|full)$/);
    const acknowledged = Number(child.lines.at(-2));
    const store = await openSqlite(path);
    expect(await wholeTurns(store)).toBe(acknowledged);
    expect(await store.append(numberedTurn(acknowledged + 1))).toBe('stored');
    await store.close();
  },
);

function fileOf(script: string): string {
  return new URL(script, import.meta.url).pathname;
}

// One process writes a kitchen's file. The lock falls with the process, and readers are not kept out.
import { mkdirSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { connectToRead } from '../../src/storage/sqlite/connection.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import { kill, scratchFolder, startScript } from './scratch.ts';

const inUse = (path: string) =>
  expect(openSqlite(path)).rejects.toMatchObject({ fault: 'inUse', place: path });

it('refuses a second process until the first is killed', async () => {
  const path = join(scratchFolder(), 'kitchen.db');
  const first = startScript('opening.script.ts', [path]);
  expect(await first.begun).toBe('opened');
  await inUse(path);
  await inUse(path);
  await kill(first);
  const store = await openSqlite(path);
  const second = startScript('opening.script.ts', [path, 'once']);
  await second.ended;
  expect(second.lines).toEqual(['inUse']);
  await store.close();
});

it('refuses a second store in the same process until the first is closed', async () => {
  const path = join(scratchFolder(), 'kitchen.db');
  const store = await openSqlite(path);
  await inUse(path);
  await store.close();
  await store.close();
  await (await openSqlite(path)).close();
});

it('knows the file by another name of its folder', async () => {
  const folder = scratchFolder();
  mkdirSync(join(folder, 'real'));
  symlinkSync(join(folder, 'real'), join(folder, 'linked'));
  const store = await openSqlite(join(folder, 'real', 'kitchen.db'));
  await expect(openSqlite(join(folder, 'linked', 'kitchen.db'))).rejects.toMatchObject({ fault: 'inUse' });
  await store.close();
});

it('lets a reader in while it is open', async () => {
  const path = join(scratchFolder(), 'kitchen.db');
  const store = await openSqlite(path);
  const reader = connectToRead(path);
  expect(reader.prepare('SELECT count(*) AS kitchens FROM kitchen').get()).toEqual({ kitchens: 0 });
  reader.close();
  await store.close();
});

it('frees the lock where opening fails', async () => {
  const path = join(scratchFolder(), 'kitchen.db');
  const onOpen = (): never => {
    throw new Error('stop');
  };
  await expect(openSqlite(path, { onOpen })).rejects.toThrow('stop');
  await (await openSqlite(path)).close();
});

it('has no lock in memory', async () => {
  const [one, other] = [await openSqlite(':memory:'), await openSqlite(':memory:')];
  expect(await one.kitchens()).toEqual([]);
  await Promise.all([one.close(), other.close()]);
});

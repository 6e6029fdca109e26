// A place that can't be written is said to be so at the start, not at the first entry, and nothing in it changes.
import { chmodSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, type TestContext } from 'vitest';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import { SETTINGS } from '../app/ports/store/samples.ts';
import { contentOf, scratchFolder, startScript } from './scratch.ts';

/** Permissions don't bind the superuser: then the store is opened as somebody else. */
const NOBODY = 65534;
const somebody = process.getuid?.() === 0 ? { uid: NOBODY, gid: NOBODY } : {};

async function openedBySomebody(path: string, context: TestContext): Promise<string> {
  const probe = startScript('opening.script.ts', [':memory:', 'once'], somebody);
  await probe.ended.catch(() => undefined);
  if (probe.lines[0] !== 'opened') context.skip('the tests cannot run as another user here');
  const script = startScript('opening.script.ts', [path, 'once'], somebody);
  await script.ended;
  return script.lines.join(' ');
}

async function folderWithFile(): Promise<string> {
  const folder = join(scratchFolder(), 'data');
  chmodSync(join(folder, '..'), 0o755);
  const store = await openSqlite(join(folder, 'kitchen.db'));
  await store.create('home', SETTINGS);
  await store.close();
  return folder;
}

describe.skipIf(process.platform === 'win32')('permissions', () => {
  it('tells of a folder that can only be read, where there is no file yet', async (context) => {
    const folder = scratchFolder();
    chmodSync(folder, 0o555);
    expect(await openedBySomebody(join(folder, 'kitchen.db'), context)).toBe('readOnly');
    expect(contentOf(folder)).toEqual(new Map());
  });

  it('tells of a folder that can only be read, where the folder for the file cannot be made', async (context) => {
    const folder = scratchFolder();
    chmodSync(folder, 0o555);
    expect(await openedBySomebody(join(folder, 'data', 'kitchen.db'), context)).toBe('readOnly');
  });

  it('tells of a file that can only be read', async (context) => {
    const folder = await folderWithFile();
    chmodSync(folder, 0o777);
    chmodSync(join(folder, 'kitchen.db'), 0o444);
    const before = contentOf(folder);
    expect(await openedBySomebody(join(folder, 'kitchen.db'), context)).toBe('readOnly');
    expect(contentOf(folder)).toEqual(before);
  });

  it('tells of a file in a folder that can only be read', async (context) => {
    const folder = await folderWithFile();
    chmodSync(join(folder, 'kitchen.db'), 0o666);
    chmodSync(folder, 0o555);
    const before = contentOf(folder);
    expect(await openedBySomebody(join(folder, 'kitchen.db'), context)).toBe('readOnly');
    expect(contentOf(folder)).toEqual(before);
  });
});

describe('no place for a file', () => {
  it('is a path below a file', async () => {
    const file = join(scratchFolder(), 'notes.txt');
    writeFileSync(file, 'notes');
    const path = join(file, 'kitchen.db');
    await expect(openSqlite(path)).rejects.toMatchObject({ fault: 'unavailable', place: path });
  });

  it('is a folder', async () => {
    const path = join(scratchFolder(), 'kitchen.db');
    mkdirSync(path);
    await expect(openSqlite(path)).rejects.toMatchObject({ fault: 'unavailable' });
  });

  it('is a name that is too long', async () => {
    const path = join(scratchFolder(), 'k'.repeat(300));
    await expect(openSqlite(path)).rejects.toMatchObject({ fault: 'unavailable' });
  });
});

it('makes the folder of a first start', async () => {
  const path = join(scratchFolder(), 'a', 'b c', 'kitchen.db');
  await (await openSqlite(path)).close();
  expect([...contentOf(join(path, '..')).keys()]).toEqual(['kitchen.db']);
});

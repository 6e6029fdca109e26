// A damaged file is said to be damaged, and is left for whoever can save something from it.
import { copyFileSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Store, StoreError } from '../../src/app/ports/store.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import { wholeLog } from '../app/ports/store/whole-log.ts';
import { SETTINGS } from '../app/ports/store/samples.ts';
import { numberedTurn, wholeTurns } from './numbered-turns.ts';
import { contentOf, scratchFolder } from './scratch.ts';

const PAGE = 4096;
const TURNS = 60;

async function filled(path: string): Promise<Store> {
  const store = await openSqlite(path);
  await store.create('home', SETTINGS);
  for (let number = 1; number <= TURNS; number += 1) await store.append(numberedTurn(number));
  return store;
}

async function sound(): Promise<string> {
  const path = join(scratchFolder(), 'kitchen.db');
  await (await filled(path)).close();
  return path;
}

/** Everything that the chat does with a store. */
async function useAll(path: string): Promise<void> {
  const store = await openSqlite(path);
  try {
    await store.load('home');
    await store.views('home');
    await wholeLog(store, 'home');
    await store.speakerFacts('home', 'lead', 100);
    await store.closedTests('home', 'ribeye', 100);
  } finally {
    await store.close();
  }
}

const faultOf = (path: string): Promise<unknown> =>
  useAll(path).then(
    () => undefined,
    (error: unknown) => (error instanceof StoreError ? error.fault : error),
  );

describe('a file that is no database', () => {
  it.each([
    ['text', Buffer.from('Ribeye 14.2 lb at 7.40\n'.repeat(400))],
    ['a short text', Buffer.from('hello')],
    ['zeros', Buffer.alloc(3 * PAGE)],
    [
      'a picture',
      Buffer.from([0x89, 0x50, 0x4e, 0x47, ...Array.from({ length: 9000 }, (_, at) => at % 251)]),
    ],
  ])('is refused and left as it was: %s', async (_, content) => {
    const path = join(scratchFolder(), 'kitchen.db');
    writeFileSync(path, content);
    await expect(openSqlite(path)).rejects.toMatchObject({ fault: 'notADatabase', place: path });
    expect(readFileSync(path).equals(content)).toBe(true);
  });
});

describe('a file that was cut off', () => {
  it.each([0.5, 0.9, 0.02])(
    'is refused as damaged and left as it was: to %d of its length',
    async (share) => {
      const path = await sound();
      truncateSync(path, Math.ceil(readFileSync(path).length * share));
      const before = readFileSync(path);
      await expect(openSqlite(path)).rejects.toMatchObject({ fault: 'damaged', place: path });
      expect(readFileSync(path).equals(before)).toBe(true);
    },
  );

  it('to nothing, with turns still in the log beside it, is not taken for a new one', async () => {
    const folder = scratchFolder();
    const live = join(scratchFolder(), 'kitchen.db');
    const store = await filled(live);
    copyFileSync(`${live}-wal`, join(folder, 'kitchen.db-wal'));
    await store.close();
    writeFileSync(join(folder, 'kitchen.db'), '');
    const before = contentOf(folder);
    expect(await faultOf(join(folder, 'kitchen.db'))).toBe('damaged');
    expect(contentOf(folder)).toEqual(before);
  });
});

describe('a page that was overwritten', () => {
  it('is found when it is read, whichever it is, and the file is left as it was', async () => {
    const path = await sound();
    const good = readFileSync(path);
    for (let page = 1; page < good.length / PAGE; page += 1) {
      const bad = Buffer.from(good);
      bad.fill(0xa5, page * PAGE, page * PAGE + 200);
      writeFileSync(path, bad);
      const fault = await faultOf(path);
      // Index pages and empty tables that nothing reads are found by the check of a backup.
      expect([undefined, 'damaged'], `page ${page + 1}`).toContain(fault);
      expect(readFileSync(path).equals(bad), `page ${page + 1}`).toBe(true);
    }
  });

  it('is found in the log of facts', async () => {
    const path = await sound();
    const bad = readFileSync(path);
    const fact = bad.indexOf('"type":"weighed"');
    bad.fill(0xa5, fact - (fact % PAGE), fact - (fact % PAGE) + 16);
    writeFileSync(path, bad);
    expect(await faultOf(path)).toBe('damaged');
    expect(readFileSync(path).equals(bad)).toBe(true);
  });

  it('is found where only the text of a fact does not read any more', async () => {
    const path = await sound();
    // Every copy of it: pages that were split keep old ones, which nothing reads.
    const bad = readFileSync(path, 'latin1').replaceAll('"type":"weighed"', '"type":"wei~hed"');
    writeFileSync(path, bad, 'latin1');
    expect(await faultOf(path)).toBe('damaged');
  });

  // 44 to 47 hold the number of the schema's format (https://www.sqlite.org/fileformat2.html, 1.3.9): from 1 to 4.
  it.each([44, 45, 46, 47])('makes no other error where byte %d flips', async (at) => {
    const path = await sound();
    const good = readFileSync(path);
    for (let bit = 0; bit < 8; bit += 1) {
      const bad = Buffer.from(good);
      bad[at] = (bad[at] ?? 0) ^ (1 << bit);
      writeFileSync(path, bad);
      const fault = await faultOf(path);
      expect(['undefined', 'string'], `bit ${bit}: ${String(fault)}`).toContain(typeof fault);
    }
  });

  it("never makes another error than the store's own, wherever single bytes flip", async () => {
    const path = await sound();
    const good = readFileSync(path);
    for (let times = 0; times < 300; times += 1) {
      const bad = Buffer.from(good);
      // Half of them in the first pages, which hold what the tables are.
      const at = Math.floor(Math.random() * (times % 2 === 0 ? good.length : 3 * PAGE));
      bad[at] = (bad[at] ?? 0) ^ (1 << Math.floor(Math.random() * 8));
      writeFileSync(path, bad);
      const fault = await faultOf(path);
      expect(['undefined', 'string'], `byte ${at}: ${String(fault)}`).toContain(typeof fault);
    }
  });
});

describe('a torn log', () => {
  it.each([0.999, 0.7, 0.5, 0.1])('keeps every turn before the tear whole: cut to %d', async (share) => {
    const path = join(scratchFolder(), 'kitchen.db');
    const live = join(scratchFolder(), 'kitchen.db');
    const store = await filled(live);
    for (const end of ['', '-wal']) copyFileSync(live + end, path + end);
    await store.close();
    truncateSync(`${path}-wal`, Math.floor(readFileSync(`${path}-wal`).length * share));
    const opened = await openSqlite(path);
    const kept = (await opened.kitchens()).length === 0 ? 0 : await wholeTurns(opened);
    expect(kept).toBeGreaterThan(share === 0.1 ? -1 : 0);
    expect(kept).toBeLessThan(TURNS);
    await opened.close();
  });
});

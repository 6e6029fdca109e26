// Voice notes are kept for as long as the kitchen has set, and no longer.
import { existsSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { recordingsIn } from '../../src/storage/recordings.ts';
import { scratchFolder } from './scratch.ts';

const DAY_MS = 24 * 3600 * 1000;
const NOON = Date.parse('2026-03-06T12:00:00Z');
const OGG = Buffer.from('OggS and so on');

function given(most?: number) {
  const folder = join(scratchFolder(), 'recordings');
  const days = new Map<string, number>();
  const recordings = recordingsIn({
    ...{ folder, kitchens: ['home', 'annex'], daysOf: (kitchen) => days.get(kitchen) },
    ...(most === undefined ? {} : { most }),
  });
  const keep = (id: string, atMs: number, kitchen = 'home'): Promise<void> =>
    recordings.keep({ kitchen, id, bytes: OGG, at: new Date(atMs).toISOString() });
  const kept = (kitchen = 'home'): readonly string[] =>
    existsSync(join(folder, kitchen)) ? readdirSync(join(folder, kitchen)).sort() : [];
  return { folder, days, keep, kept, sweep: recordings.sweep };
}

it('keeps nothing where nobody has set it, and makes no folder', async () => {
  const { folder, keep } = given();
  await keep('1_2', NOON);
  expect(existsSync(folder)).toBe(false);
});

it('keeps a note once, for nobody else to read', async () => {
  const { folder, days, keep, kept } = given();
  days.set('home', 7);
  await keep('-1_2', NOON);
  await keep('-1_2', NOON);
  expect(kept()).toEqual(['2026-03-06T12-00-00Z--1_2.ogg']);
  if (process.platform !== 'win32') {
    expect(statSync(join(folder, 'home', kept()[0] ?? '')).mode & 0o777).toBe(0o600);
    expect(statSync(join(folder, 'home')).mode & 0o077).toBe(0);
  }
});

it('deletes what is due, and each kitchen’s by its own setting', async () => {
  const { days, keep, kept, sweep } = given();
  days.set('home', 2).set('annex', 5);
  for (const kitchen of ['home', 'annex'])
    for (const ago of [0, 1, 3]) await keep(`n${ago}`, NOON - ago * DAY_MS, kitchen);
  await sweep(NOON);
  expect(kept()).toHaveLength(2);
  expect(kept('annex')).toHaveLength(3);
  await sweep(NOON + DAY_MS);
  expect(kept()).toHaveLength(1);
});

it('deletes all of them where the setting is taken back, and leaves what is not ours', async () => {
  const { folder, days, keep, kept, sweep } = given();
  days.set('home', 2);
  await keep('a', NOON);
  writeFileSync(join(folder, 'home', 'read me.txt'), 'mine');
  days.delete('home');
  await sweep(NOON);
  expect(kept()).toEqual(['read me.txt']);
});

it('lets the oldest go where there are too many', async () => {
  const { days, keep, kept, sweep } = given(2.5 * OGG.length);
  days.set('home', 30);
  for (const ago of [3, 2, 1]) await keep(`n${ago}`, NOON - ago * 1000);
  await sweep(NOON);
  expect(kept().map((name) => name.slice(-6))).toEqual(['n2.ogg', 'n1.ogg']);
});

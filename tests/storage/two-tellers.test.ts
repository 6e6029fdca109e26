// The summary of a date, and an alarm, come once: two programs on one file, one that is killed and one that comes after it.
import { join } from 'node:path';
import { expect, it } from 'vitest';
import type { Settings } from '../../src/core/kitchen.ts';
import { openTable } from '../../src/app/turn.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import { english } from '../language/english.ts';
import { kill, scratchFolder, startScript } from './scratch.ts';

const SETTINGS: Settings = {
  ...{ unit: 'lb', currency: 'USD', timezone: 'America/Chicago', language: 'en', laborAvoidable: true },
  ...{ summaryAt: '22:00', openedAt: '2026-03-06T12:00:00.000Z' },
};
/** Ten at night in Chicago; the lot was ground at nine in the morning. */
const NIGHT = '2026-03-07T04:00:00.000Z';
const DUE = ['summary:day:2026-03-06', expect.stringMatching(/^lot:1:.*:cook:2026-03-06$/)];

async function newKitchen(): Promise<string> {
  const path = join(scratchFolder(), 'kitchen.db');
  const store = await openSqlite(path);
  await store.create('home', SETTINGS);
  const table = await openTable({ store, id: 'home', ...english });
  await table.take({
    id: 'm1',
    speaker: 'ana',
    at: '2026-03-06T15:00:00.000Z',
    text: 'grinding the trim',
    role: 'owner',
  });
  await store.close();
  return path;
}

/** What the log says was told. */
async function toldIn(path: string): Promise<readonly string[]> {
  const store = await openSqlite(path);
  const keys: string[] = [];
  for await (const { fact } of store.facts('home')) if (fact.type === 'fired') keys.push(fact.key);
  await store.close();
  return keys.sort().toReversed();
}

it('of two programs that start at once only one tells', async () => {
  const path = await newKitchen();
  const both = [1, 2].map(() => startScript('telling.script.ts', [path, NIGHT, 'once']));
  await Promise.all(both.map(({ ended }) => ended));
  const said = both.flatMap(({ lines }) => lines);
  // The other one is refused, or comes when the first has closed the file and finds it told.
  expect(
    said
      .filter((line) => line.startsWith('summary:') || line.startsWith('lot:'))
      .sort()
      .toReversed(),
  ).toEqual(DUE);
  expect(said.filter((line) => line === 'inUse' || line === 'looked')).toHaveLength(2);
  expect(await toldIn(path)).toEqual(DUE);
});

it('one that is killed after telling leaves nothing to tell to the next', async () => {
  const path = await newKitchen();
  const first = startScript('telling.script.ts', [path, NIGHT]);
  await expect.poll(() => first.lines, { timeout: 60_000 }).toContain('looked');
  await kill(first);
  const next = startScript('telling.script.ts', [path, NIGHT, 'once']);
  await next.ended;
  expect(next.lines).toEqual(['opened', 'looked']);
  expect(await toldIn(path)).toEqual(DUE);
});

it('one that is killed before it has told all leaves the rest to the next', async () => {
  const path = await newKitchen();
  const first = startScript('telling.script.ts', [path, NIGHT]);
  expect(await first.begun).toBe('opened');
  await kill(first);
  const next = startScript('telling.script.ts', [path, NIGHT, 'once']);
  await next.ended;
  expect(next.lines.at(-1)).toBe('looked');
  expect(await toldIn(path)).toEqual(DUE);
});

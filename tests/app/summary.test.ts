// The summary of a day: the verdicts as they hold, what nobody saw to, and all of it on the screen of a phone.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { stringify } from 'yaml';
import { scratchOpener } from '../../src/app/scratch.ts';
import { play } from '../../src/channels/replay/play.ts';
import { readShift } from '../../src/channels/replay/shift-file.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import { english } from '../language/english.ts';

const folder = mkdtempSync(join(tmpdir(), 'summary-'));
afterAll(() => {
  rmSync(folder, { recursive: true });
});
const open = scratchOpener(() => openSqlite(':memory:'), english);

type Line = readonly [at: string, said: string];

async function repliesTo(...lines: readonly Line[]): Promise<readonly string[]> {
  const path = join(folder, 'shift.yaml');
  const turns = lines.map(([at, typed]) => ({ at: `2026-03-${at}`, typed }));
  writeFileSync(path, stringify({ kitchen: { timezone: 'America/Chicago' }, turns }));
  const { turns: played } = await play(open, readShift(path));
  return (played as unknown as readonly { reply: string }[]).map(({ reply }) => reply);
}

const lastReply = async (...lines: readonly Line[]): Promise<string> =>
  (await repliesTo(...lines)).at(-1) ?? '';

const CUT: Line = [
  '05T09:00',
  'ribeye 14.2 lb at 7.40, trim 1.1, fat 1.9, portions weigh 11.2, ready cut 11.00, done',
];
const TODAY = 'how did we do today';

it('names a verdict that a ready-cut price turned on a day without a cut', async () => {
  // 14.2 × 7.40 ÷ 11.2 = 9.38 a pound: between the two prices.
  const said = await lastReply(CUT, ['06T10:00', 'ready cut ribeye 8.50'], ['06T11:00', TODAY]);
  expect(said).toContain('ribeye turned: CUT before, BUY now.');
  expect(await lastReply(CUT, ['06T10:00', 'ready cut ribeye 12'], ['06T11:00', TODAY])).not.toContain(
    'turned',
  );
});

it('tells of a day what turned on it, and not what turned since', async () => {
  const turned: Line = ['06T10:00', 'ready cut ribeye 8.50'];
  expect(await lastReply(CUT, turned, ['06T11:00', 'how did we do yesterday'])).not.toContain('turned');
  expect(await lastReply(CUT, turned, ['07T11:00', 'how did we do yesterday'])).toContain('ribeye turned');
  expect(await lastReply(CUT, turned, ['07T11:00', TODAY])).not.toContain('turned');
});

it('turns from the verdict that a price gave after closing', async () => {
  const cut: Line = ['05T09:00', 'ribeye 14.2 lb at 7.40, trim 1.1, fat 1.9, portions weigh 11.2, done'];
  const said = await lastReply(
    cut,
    ['05T10:00', 'ready cut ribeye 8.50'],
    ['06T10:00', 'ready cut ribeye 11'],
    ['06T11:00', TODAY],
  );
  expect(said).toContain('ribeye turned: BUY before, CUT now.');
});

it('counts an alarm that still rings, and none that a reading has answered', async () => {
  const warm: readonly Line[] = [
    ['05T09:00', 'raw trim 45'],
    ['05T09:16', TODAY],
  ];
  expect(await lastReply(...warm)).toContain('1 alarm that nobody has acknowledged');
  expect(await lastReply(...warm, ['05T09:20', 'raw trim 38'], ['05T09:21', TODAY])).not.toContain('alarm');
});

it('tells of a thermometer that was off, and on the week how many checks there were', async () => {
  const right: Line = ['05T09:00', 'ice bath 33'];
  expect(await lastReply(right, ['05T10:00', TODAY])).not.toContain('thermometer');
  expect(await lastReply(right, ['05T09:10', 'ice bath 35'], ['05T10:00', TODAY])).toContain(
    '2 thermometer checks, 1 OFF',
  );
  expect(await lastReply(right, ['06T10:00', 'how did we do this week'])).toContain(
    '1 thermometer check, all within 2 °F',
  );
});

/** Common practice, no source: a phone held upright shows some 40 letters a line and some 25 lines of a message. */
const [LETTERS, LINES] = [40, 25];

it('fits the screen of a phone on the worst of days', async () => {
  const cuts = ['ribeye', 'striploin', 'tenderloin', 'top sirloin', 'pork loin', 'lamb rack', 'short loin'];
  const before = cuts.flatMap((cut): Line[] => [
    ['05T09:00', `${cut} 14.2 lb at 7.40, trim 1.1, fat 1.9, portions weigh 11.1, ready cut 11.00, done`],
    ['05T09:00', 'yes'],
  ]);
  const day = cuts.flatMap((cut): Line[] => [
    ['06T09:00', `${cut} 14.4 lb at 7.40, trim 1.1, fat 1.9, 12 portions 14 oz, portions weigh 11.3, done`],
    ['06T09:00', 'yes'],
    ['06T09:00', `ready cut ${cut} 8.50`],
  ]);
  const more = cuts.map((cut): Line => ['06T10:00', `${cut} 13 lb at 7.40`]);
  const said = await lastReply(...before, ...day, ...more, ['06T10:00', 'grinding 3 lb of trim'], ['06T10:00', 'another grind of trim'], ['06T10:00', 'ice bath 36'], ['06T23:00', TODAY]); // prettier-ignore
  expect(said).toContain('and 3 more turned: CUT before, BUY now.');
  expect(said).toContain('Still open');
  const rows = said.split('\n').reduce((sum, line) => sum + Math.ceil(line.length / LETTERS), 0);
  expect(rows, said).toBeLessThanOrEqual(LINES);
});

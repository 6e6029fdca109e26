// Files by the way of a message: what is in them for whom, and that none of them can take the answer away.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import type { PaperMaker, Picture, Sheet } from '../../src/app/ports/paper.ts';
import { openTable } from '../../src/app/turn.ts';
import { fileKeeper } from '../../src/channels/terminal.ts';
import { fileName } from '../../src/core/paper.ts';
import type { Role } from '../../src/core/role.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import { english } from '../language/english.ts';

const SHIFT = [
  'ribeye 14.2 lb at 7.40',
  'trim 1.1 worth 1.50',
  'portions weigh 13',
  'ready cut 9.85',
  'done',
];

async function kitchen() {
  const store = await openSqlite(':memory:');
  const settings = {
    unit: 'lb',
    currency: 'USD',
    timezone: 'America/Chicago',
    language: 'en',
    laborAvoidable: true,
  } as const;
  await store.create('k', settings);
  const made: (Sheet | Picture)[] = [];
  const keep = (paper: Sheet | Picture) => {
    made.push(paper);
    return Promise.resolve(new Uint8Array([1]));
  };
  const papers: PaperMaker = { sheet: keep, draw: keep };
  let count = 0;
  const open = () => openTable({ store, id: 'k', papers, ...english });
  let table = await open();
  const take = (text: string, role: Role = 'owner', readBy?: Role) =>
    table.take({
      id: `m${(count += 1)}`,
      speaker: role,
      at: '2026-03-07T03:00:00.000Z',
      text,
      role,
      ...(readBy && { readBy }),
    });
  for (const line of SHIFT) await take(line);
  return { take, made, reopen: async () => void (table = await open()) };
}

const ASKED = ['export ribeye', 'export ribeye to excel', 'picture of the ribeye', 'ribeye yield chart'];

it.each(ASKED)('makes nothing of "%s" until the file is asked for', async (line) => {
  const { take, made } = await kitchen();
  const { files = [] } = await take(line);
  expect(files).toHaveLength(1);
  expect(made).toEqual([]);
  await files[0]?.bytes();
  expect(made).toHaveLength(1);
});

it.each(ASKED)('shows costs in "%s" to the owner only', async (line) => {
  const { take, made } = await kitchen();
  for (const [role, readBy] of [['owner'], ['cutter'], ['owner', 'cutter']] as const)
    await (await take(line, role, readBy)).files?.[0]?.bytes();
  const [owner, cutter, shared] = made.map((paper) => JSON.stringify(paper));
  expect(owner).toMatch(/cost/);
  for (const hidden of [cutter, shared]) {
    expect(hidden).toContain('ribeye');
    expect(hidden).not.toMatch(/cost|price|\$|USD|7\.4|9\.85|ready-cut/);
  }
});

it('tells the figures of each test in the unit of the kitchen, on its local date', async () => {
  const { take, made } = await kitchen();
  await (await take('export ribeye')).files?.[0]?.bytes();
  const { rows, columns } = made[0] as Sheet;
  const row = Object.fromEntries(columns.map((column, at) => [column, rows[0]?.[at]]));
  expect(rows).toHaveLength(1);
  // 13 of 14.2; (14.2 × 7.40 − 1.1 × 1.50) ÷ 13
  expect(row).toEqual({
    item: { text: 'ribeye' },
    closed: { text: '2026-03-06' },
    supplier: undefined,
    cutter: { text: 'owner' },
    'received (lb)': { figure: '14.2' },
    'trim (lb)': { figure: '1.1' },
    'portions (lb)': { figure: '13' },
    'portions (count)': undefined,
    'yield (%)': { figure: '91.5493' },
    'labor (min)': undefined,
    'price (USD/lb)': { figure: '7.4' },
    'usable cost (USD/lb)': { figure: '7.9562' },
    'labor (USD)': undefined,
    'packing (USD)': undefined,
    'with labor and packing (USD/lb)': { figure: '7.9562' },
    remark: undefined,
  });
});

it('has a column for each part that came off, from whom, by whom, and what the work cost', async () => {
  const { take, made } = await kitchen();
  for (const line of [
    'ribeye 10 lb at 8 from =cmd',
    'fat 1, =A1 0.5',
    '8 portions 16 oz, portions weigh 8.1',
    'took 30 minutes at 20 an hour',
    'packing 10 cents each',
    'done',
    'done',
  ])
    await take(line, 'lead');
  await (await take('export ribeye')).files?.[0]?.bytes();
  await (await take('export ribeye', 'cutter')).files?.[0]?.bytes();
  const [owners, cutters] = made as Sheet[];
  const read = ({ rows, columns }: Sheet, at: number) =>
    Object.fromEntries(columns.map((column, place) => [column, rows[at]?.[place]]));
  // (10 × 8.00 + 10 + 0.80) ÷ 8.1
  expect(owners && read(owners, 0)).toMatchObject({
    cutter: { text: 'lead' },
    'fat (lb)': { figure: '1' },
    'trim (lb)': undefined,
    'portions (count)': { figure: '8' },
    'labor (min)': { figure: '30' },
    'labor (USD)': { figure: '10' },
    'packing (USD)': { figure: '0.8' },
    'with labor and packing (USD/lb)': { figure: '11.2099' },
  });
  expect(owners && read(owners, 1)).toMatchObject({ 'fat (lb)': undefined, 'trim (lb)': { figure: '1.1' } });
  expect(cutters && read(cutters, 0)).toMatchObject({
    'fat (lb)': { figure: '1' },
    'labor (min)': { figure: '30' },
  });
  expect(cutters?.columns.filter((column) => /USD/.test(column))).toEqual([]);
});

it('draws the newest closed test after a new start', async () => {
  const { take, reopen } = await kitchen();
  await reopen();
  expect(await take('picture of the ribeye', 'lead')).toMatchObject({
    outcome: 'answered',
    files: [{ name: 'ribeye-test.png' }],
  });
});

it('tells of a file that could not be made, and of one that was', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'papers-'));
  const keep = fileKeeper(join(folder, 'exports'), (became, what) => `${became} ${what}`);
  const file = { name: 'a.png', type: 'image/png', caption: '' };
  expect(await keep({ ...file, bytes: () => Promise.reject(new Error('no font')) })).toBe('failed a.png');
  const place = join(folder, 'exports', 'a.png');
  expect(await keep({ ...file, bytes: () => Promise.resolve(new Uint8Array([7])) })).toBe(`written ${place}`);
  expect([...readFileSync(place)]).toEqual([7]);
  rmSync(folder, { recursive: true });
});

it.each([
  ['ribeye', 'ribeye-tests'],
  ['../../etc/passwd', 'etc-passwd-tests'],
  ['=cmd|x', 'cmd-x-tests'],
  ['bœuf haché', 'bœuf-haché-tests'],
])('names the file of %j %s', (item, expected) => {
  expect(fileName(item, 'tests')).toBe(expected);
});

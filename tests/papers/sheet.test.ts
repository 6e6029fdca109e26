// Tables read back by readers of other people: a zip and the XML in it, and a plain reading of RFC 4180.
import { strFromU8, unzipSync } from 'fflate';
import { expect, it } from 'vitest';
import type { Sheet } from '../../src/app/ports/paper.ts';
import { guarded } from '../../src/papers/sheets/guard.ts';
import { sheet } from '../../src/papers/sheets/sheet.ts';

const table = (format: Sheet['format']): Sheet => ({
  format,
  columns: ['item', 'received (lb)', 'remark'],
  rows: [
    [{ text: 'ribeye, "lip on"' }, { figure: '14.2' }, undefined],
    [{ text: '=HYPERLINK("http://x")' }, { figure: '-0.05' }, { text: '<b> & ü' }],
  ],
});

/** By RFC 4180: quotes doubled, a record a line. */
function readCsv(bytes: Uint8Array): readonly (readonly string[])[] {
  const lines = new TextDecoder().decode(bytes).split('\r\n').slice(0, -1);
  return lines.map((line) =>
    [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(
      ([, quoted, plain]) => quoted?.replaceAll('""', '"') ?? plain ?? '',
    ),
  );
}

it('writes CSV that reads back, with no formula in it', async () => {
  expect(readCsv(await sheet(table('csv')))).toEqual([
    ['item', 'received (lb)', 'remark'],
    ['ribeye, "lip on"', '14.2', ''],
    [`'=HYPERLINK("http://x")`, '-0.05', '<b> & ü'],
  ]);
});

it('runs no formula in the head of a column either: it may be named for a part', async () => {
  const named = { ...table('csv'), columns: ['item', '=A1 (lb)', '@cap'] };
  expect(readCsv(await sheet(named))[0]).toEqual(['item', "'=A1 (lb)", "'@cap"]);
  const files = unzipSync(await sheet({ ...named, format: 'xlsx' }));
  const texts = Object.values(files)
    .map((bytes) => strFromU8(bytes))
    .join('');
  expect(texts).toMatch(/(&apos;|&#39;|')=A1/);
  expect(texts).not.toMatch(/>=A1|<f[ >]/);
});

it('marks CSV as UTF-8 for spreadsheets', async () => {
  expect([...(await sheet(table('csv'))).slice(0, 3)]).toEqual([0xef, 0xbb, 0xbf]);
});

it('writes a workbook with figures as numbers, text as text and no formula', async () => {
  const files = unzipSync(await sheet(table('xlsx')));
  const page = strFromU8(files['xl/worksheets/sheet1.xml'] ?? new Uint8Array());
  const shared = strFromU8(files['xl/sharedStrings.xml'] ?? new Uint8Array());
  const values = [...page.matchAll(/<v>([^<]*)<\/v>/g)].map(([, value]) => value);
  expect(values).toEqual(expect.arrayContaining(['14.2', '-0.05']));
  expect(page).not.toMatch(/<f[ >]/);
  expect(page + shared).toMatch(/(&apos;|&#39;|')=HYPERLINK/);
  expect(page + shared).not.toMatch(/>=HYPERLINK/);
  expect(page + shared).toContain('&lt;b&gt; &amp; ü');
});

it.each([
  '=1+1',
  '+1',
  '-1',
  '@SUM(A1)',
  '\t=1',
  '\r=1',
  '\n=1',
  '  =1',
  '＝1',
  '＋1',
  '－1',
  '＠a',
  '=cmd|’x’!A1',
])('guards %j', (text) => {
  expect(guarded(text)).toBe(`'${text}`);
});

it.each(['ribeye', '14.2', 'a=b', 'top sirloin - cap', "'quoted", ''])('leaves %j as it is', (text) => {
  expect(guarded(text)).toBe(text);
});

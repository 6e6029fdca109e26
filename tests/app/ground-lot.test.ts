// A lot of ground trim through a day, as a replay plays it: what is sent, when, to whom, and what stops it.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { stringify } from 'yaml';
import { scratchOpener } from '../../src/app/scratch.ts';
import { play } from '../../src/channels/replay/play.ts';
import { readShift } from '../../src/channels/replay/shift-file.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import { english } from '../language/english.ts';

const folder = mkdtempSync(join(tmpdir(), 'lot-'));
afterAll(() => {
  rmSync(folder, { recursive: true });
});
const open = scratchOpener(() => openSqlite(':memory:'), english);

type Line = readonly [at: string, said: string, from?: string];

/** What was sent that day, "HH:MM to: words". */
async function sentOn(...lines: readonly Line[]): Promise<readonly string[]> {
  const path = join(folder, 'shift.yaml');
  const turns = lines.map(([at, typed, from = 'ines']) => ({ at: `2026-03-${at}`, from, typed }));
  writeFileSync(path, stringify({ kitchen: { timezone: 'America/Chicago' }, turns }));
  const { sent } = await play(open, readShift(path));
  return (sent as unknown as readonly { at: string; to: string; text: string }[]).map(
    ({ at, to, text }) => `${at.slice(8, 16)} ${to}: ${text.replaceAll('\n', ' ')}`,
  );
}

const timesOf = (sent: readonly string[], words: string): readonly string[] =>
  sent.filter((each) => each.includes(words)).map((each) => each.slice(0, 8));

const GROUND: Line = ['06T10:00', 'grinding the trim'];
const ON: Line = ['06T10:30', 'cooking a batch'];

describe('the temperature of a batch', () => {
  it('is asked for until a passing reading of that batch, whoever has heard the alarm', async () => {
    const sent = await sentOn(
      GROUND,
      ON,
      ['06T10:41', 'got it'],
      ['06T10:57', 'got it'],
      ['06T11:00', 'burger temp 158'],
      ['06T11:04', 'got it'],
      ['06T11:30', 'burger temp 166'],
      ['06T17:00', 'where are we'],
    );
    expect(timesOf(sent, 'a batch is on the heat')).toEqual(['06T10:40', '06T10:56']);
    // Three minutes after the failing one; heard at 11:04, and back a quarter of an hour later.
    expect(timesOf(sent, 'was at 158 °F')).toEqual(['06T11:03', '06T11:19', '06T11:29']);
    expect(sent.filter((each) => each.slice(0, 8) > '06T11:30')).toEqual([]);
  });

  it('comes back after the time that the kitchen has set', async () => {
    const set: Line = ['06T09:00', 'batch alarms come back after 40 minutes'];
    const sent = await sentOn(set, GROUND, ON, ['06T10:41', 'got it'], ['06T11:25', 'burger temp 166']);
    expect(timesOf(sent, 'a batch is on the heat')).toEqual(['06T10:40', '06T11:21']);
  });

  it('is not asked for once the batch was thrown away, and the lot is asked about an hour later', async () => {
    const sent = await sentOn(GROUND, ON, ['06T10:35', 'threw out the batch'], ['06T11:40', 'grind used up']);
    expect(timesOf(sent, 'a batch is on the heat')).toEqual([]);
    expect(timesOf(sent, 'is open: temperature')).toEqual(['06T11:35']);
  });

  it('is not asked for once the lot is closed', async () => {
    const sent = await sentOn(GROUND, ON, ['06T10:35', 'threw out the grind'], ['07T18:00', 'where are we']);
    expect(sent).toEqual([]);
  });

  it('of one batch does not clear another', async () => {
    const sent = await sentOn(
      GROUND,
      ON,
      ['06T10:38', 'burger temp 166'],
      ['06T12:00', 'cooking a batch'],
      ['06T12:11', 'grind used up'],
    );
    expect(timesOf(sent, 'a batch is on the heat')).toEqual(['06T12:10']);
  });

  it('is over after four hours without a word, and then the day is asked about again until its end', async () => {
    const sent = await sentOn(GROUND, ON, ['06T10:41', 'got it'], ['07T06:00', 'where are we']);
    const last = timesOf(sent, 'a batch is on the heat').at(-1) ?? '';
    expect(last < '06T14:30').toBe(true);
    expect(timesOf(sent, 'is open: temperature')[0]).toBe('06T14:30');
    expect(sent.filter((each) => each.slice(0, 8) >= '07T00:00')).toEqual([]);
  });
});

describe('a lot on which nothing is cooked', () => {
  it('is asked about each local day, and again two hours after somebody has heard it', async () => {
    const sent = await sentOn(
      GROUND,
      ['06T11:01', 'got it'],
      ['06T13:05', 'got it'],
      ['07T09:00', 'undo'],
      ['07T11:01', 'got it'],
      ['07T12:00', 'burger temp 166'],
      ['07T23:00', 'where are we'],
    );
    expect(timesOf(sent, 'is open: temperature')).toEqual(['06T11:00', '06T13:01', '06T15:05', '06T15:15', '06T15:35', '06T17:35', '06T19:35', '06T21:35', '06T23:35', '07T11:00'
    ]); // prettier-ignore
  });
});

describe('raw meat that is warm, of no lot', () => {
  it('rings again after each "got it", and fifteen minutes apart where nobody hears it, until a cold reading', async () => {
    const sent = await sentOn(
      ['06T10:00', 'raw trim 45'],
      ['06T10:16', 'got it'],
      ['06T10:32', 'got it'],
      ['06T11:30', 'raw trim 42'],
      ['06T11:46', 'got it'],
      ['06T11:50', 'raw trim 41'],
      ['06T23:00', 'where are we'],
    );
    expect(timesOf(sent, 'Chill it now')).toEqual(['06T10:15', '06T10:31', '06T10:47', '06T10:57', '06T11:12', '06T11:27', '06T11:45'
    ]); // prettier-ignore
  });
});

describe('an alarm', () => {
  it('names its source and the local code', async () => {
    const sent = await sentOn(
      GROUND,
      ['06T10:05', 'raw trim 45'],
      ['06T10:21', 'raw trim 40'],
      ON,
      ['06T10:41', 'burger temp 158'],
      ['06T10:45', 'burger temp 166'],
      ['08T10:01', 'where are we'],
    );
    expect(sent.length).toBeGreaterThan(5);
    for (const each of sent) {
      expect(each).toMatch(/Food Code|USDA FSIS/);
      expect(each).toContain('Check your local code');
    }
  });

  it('that was acknowledged rings again once that is taken back', async () => {
    const sent = await sentOn(
      GROUND,
      ['06T11:01', 'got it'],
      ['06T11:05', 'undo'],
      ['06T11:20', 'grind used up'],
    );
    expect(timesOf(sent, 'is open: temperature')).toEqual(['06T11:00', '06T11:15']);
  });
});

describe('trim that is thrown away', () => {
  it('is nobody’s to chill any more', async () => {
    const sent = await sentOn(
      ['06T10:00', 'raw trim 45'],
      ['06T10:16', 'threw out the trim'],
      ['06T12:00', 'where are we'],
    );
    expect(timesOf(sent, 'Chill it now')).toEqual(['06T10:15']);
  });

  it('goes into no lot, the rest of it does, and undo brings it back', async () => {
    const path = join(folder, 'thrown.yaml');
    const said = [
      'ribeye 14.2 lb',
      'trim 1.2',
      'striploin 13 lb',
      'trim 2.4',
      'tossed 0.9 lb of trim',
      'tossed 9 lb of trim',
      '2.7',
      'grinding the trim',
      'undo',
      'undo',
      'grinding the trim',
    ];
    const turns = said.map((typed, index) => ({ ...(index === 0 ? { at: '2026-03-06T09:00' } : {}), typed }));
    writeFileSync(path, stringify({ kitchen: {}, turns }));
    const played = (await play(open, readShift(path))).turns as unknown as readonly {
      outcome: string;
      reply: string;
    }[];
    const [some, tooMuch, all, none, , , rest] = played.slice(4);
    // 0.9 of 3.6 lb: a quarter of each.
    expect(some).toMatchObject({ outcome: 'recorded' });
    expect(some?.reply).toContain('ribeye 0.3 lb, striploin 0.6 lb');
    expect(some?.reply).toContain('2.7 lb is left');
    expect(tooMuch).toMatchObject({ outcome: 'asked' });
    expect(all?.reply).toContain('trim 2.7 lb thrown away');
    expect(none?.reply).toContain('no cutting test behind it');
    expect(rest?.reply).toContain('from ribeye 0.9 lb, striploin 1.8 lb');
  });
});

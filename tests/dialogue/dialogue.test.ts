// The rules of the dialogue, played through the whole program: the parser, the intents, a database in memory, the
// replies. Each row is a shift; the figures that it expects are worked out from what the row says, not by the program.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { stringify } from 'yaml';
import { scratchOpener } from '../../src/app/scratch.ts';
import type { Answer } from '../../src/app/ports/table.ts';
import { openTable } from '../../src/app/turn.ts';
import { loadVoice } from '../../src/app/voice.ts';
import { messageOf, play } from '../../src/channels/replay/play.ts';
import { readShift, type Shift } from '../../src/channels/replay/shift-file.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import { difference } from './difference.ts';
import { type Row, rowsIn } from './rows.ts';

const here = new URL('.', import.meta.url).pathname;
const voice = loadVoice(join(here, '../../intents'), 'en');
const open = scratchOpener(() => openSqlite(':memory:'), voice);
const folder = mkdtempSync(join(tmpdir(), 'dialogue-'));
afterAll(() => {
  rmSync(folder, { recursive: true });
});

const NINE = '2026-03-06T09:00';

/** The row as the file that a replay reads. */
function shiftOf({ kitchen = {}, turns }: Row): Shift {
  const path = join(folder, 'shift.yaml');
  const said = turns.map(({ then: _, ...turn }, index) => (index === 0 ? { at: NINE, ...turn } : turn));
  writeFileSync(path, stringify({ kitchen, turns: said }));
  return readShift(path);
}

interface Turn {
  readonly text: string;
  readonly outcome: string;
  readonly entries: unknown;
  readonly reply: string;
}

/** Everything that is otherwise than the row says. */
async function faultsOf(row: Row): Promise<readonly string[]> {
  const played = await play(open, shiftOf(row));
  const turns = played.turns as unknown as readonly Turn[];
  const tests = row.tests && difference(row.tests, played.tests, { partial: true }, 'tests');
  return [
    ...turns.flatMap((turn, index) => faultsIn(turn, row.turns[index]?.then)),
    ...(tests === undefined ? [] : [tests]),
  ];
}

function faultsIn(
  { text, outcome, entries, reply }: Turn,
  expected: Row['turns'][number]['then'],
): readonly string[] {
  if (expected === undefined) return [];
  const faults: string[] = [];
  if (outcome !== expected.outcome) faults.push(`is ${outcome}, not ${expected.outcome}`);
  const other = expected.entries && difference(expected.entries, entries, { partial: false }, 'entries');
  if (other !== undefined) faults.push(other);
  faults.push(
    ...(expected.reply ?? [])
      .filter((words) => !reply.includes(words))
      .map((words) => `does not say "${words}"`),
  );
  faults.push(
    ...(expected.not ?? []).filter((words) => reply.includes(words)).map((words) => `says "${words}"`),
  );
  return faults.map((fault) => `"${text}" ${fault} [${reply}]`);
}

for (const [file, rows] of rowsIn(here)) {
  describe(file, () => {
    it.each(rows.map((row) => [row.name, row] as const))('%s', async (_, row) => {
      const faults = await faultsOf(row);
      if (row.failing === undefined) expect(faults).toEqual([]);
      else expect(faults, `it works now: take "failing" out of the row`).not.toEqual([]);
    });
  });
}

describe('a line weighed up', () => {
  it.each(rowsIn(here).map(([file, rows]) => [file, rows] as const))(
    'comes to what it would record, and changes nothing: %s',
    async (_, rows) => {
      for (const row of rows) {
        const shift = shiftOf(row);
        const scratch = await open(shift.settings);
        for (const [index, turn] of shift.turns.entries()) {
          const message = messageOf(shift, turn, `turn${index}`);
          const first = plain(await scratch.weighUp(message));
          expect(plain(await scratch.weighUp(message))).toEqual(first);
          expect(plain(await scratch.take(message))).toEqual(first);
        }
      }
    },
  );
});

/** What of an answer can be compared. */
const plain = ({ replyFor: _, cardFor: __, ...rest }: Answer): unknown => rest;

describe('started anew before every line', () => {
  it.each(rowsIn(here).map(([file, rows]) => [file, rows] as const))(
    'it comes to the same: %s',
    async (_, rows) => {
      for (const row of rows) {
        const shift = shiftOf(row);
        const scratch = await open(shift.settings);
        const store = await openSqlite(':memory:');
        await store.create('kitchen', shift.settings);
        for (const [index, turn] of shift.turns.entries()) {
          const message = messageOf(shift, turn, `turn${index}`);
          const table = await openTable({ store, id: 'kitchen', ...voice });
          const [one, other] = [await table.take(message), await scratch.take(message)];
          expect(plain(one), `${row.name}: ${turn.text}`).toEqual(plain(other));
        }
        await store.close();
      }
    },
  );
});

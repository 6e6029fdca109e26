// What memory may ask about is what no ordinary shift says. Months of cuts by rough hands, drawn by chance within what a
// trade sees, are told turn by turn: each entry must be recorded, whatever came before. And a decimal point that was lost
// where the tests before were alike must be asked about.
import { describe, expect, it } from 'vitest';
import { scratchOpener } from '../../src/app/scratch.ts';
import { loadVoice } from '../../src/app/voice.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import { type Draw, seeded, times } from '../language/seeded.ts';

const voice = loadVoice(new URL('../../intents', import.meta.url).pathname, 'en');
const open = scratchOpener(() => openSqlite(':memory:'), voice);
const SETTINGS = {
  unit: 'lb',
  currency: 'USD',
  timezone: 'UTC',
  language: 'en',
  laborAvoidable: true,
} as const;

/** What a piece weighs, what it costs, and what comes off it in percent: invented, and of the size that the trade knows. */
interface Cut {
  readonly item: string;
  readonly pounds: number;
  readonly price: number;
  readonly parts: Readonly<Record<string, number>>;
}
const CUTS: readonly Cut[] = [
  { item: 'ribeye', pounds: 14, price: 8.4, parts: { purge: 1, fat: 11, lip: 3, trim: 8 } },
  { item: 'brisket', pounds: 14, price: 4.1, parts: { purge: 1.5, fat: 26, trim: 7 } },
  { item: 'tenderloin', pounds: 6, price: 13, parts: { purge: 1.2, silverskin: 4, chain: 8, fat: 16 } },
  { item: 'lamb rack', pounds: 2, price: 16, parts: { membrane: 1.5, fat: 22, bone: 9 } },
  { item: 'pork loin', pounds: 9, price: 2.9, parts: { silverskin: 2, fat: 7, trim: 6 } },
];

/** Somewhere between a third and three times the usual, mostly near it: a lean piece, a fat one, a cutter who trims hard. */
const rough = (draw: Draw): number => 3 ** ((draw(1001) + draw(1001) + draw(1001) - 1500) / 1500);
/** As a scale shows it: steps of 0.05 lb, never nothing. */
const onScale = (pounds: number): number => Math.max(1, Math.round(pounds * 20)) / 20;
const MOST_PCT = 45;

function shift(draw: Draw, { item, pounds, price, parts }: Cut, supplier: string): readonly string[] {
  const received = onScale(pounds * (0.75 + draw(51) / 100));
  const paid = (price * (0.85 + draw(31) / 100)).toFixed(2);
  const weighed = Object.entries(parts).map(
    ([part, pct]) => [part, onScale((received * Math.min(MOST_PCT, pct * rough(draw))) / 100)] as const,
  );
  const off = weighed.reduce((sum, [, weight]) => sum + weight, 0);
  return [
    `${item} ${received} lb at ${paid} from ${supplier}`,
    ...weighed.map(([part, weight]) => `${part} ${weight}`),
    `portions weigh ${((received - off) * 0.985).toFixed(2)}`,
    'done',
  ];
}

/** What is said, and what came of it, wherever that was not recorded. */
async function notRecorded(seed: number, tests: number): Promise<readonly string[]> {
  const draw = seeded(seed);
  const table = await open(SETTINGS);
  const found: string[] = [];
  let turn = 0;
  for (const test of times(tests, (index) => index)) {
    const cut = CUTS[test % CUTS.length] as Cut;
    for (const text of shift(draw, cut, draw(2) === 0 ? 'harbor' : 'lake')) {
      turn += 1;
      const at = new Date(Date.UTC(2026, 2, 2) + turn * 3_600_000).toISOString();
      const { outcome, reply } = await table.take({
        id: `${turn}`,
        speaker: `cook${draw(2)}`,
        at,
        text,
        role: 'owner',
      });
      if (outcome !== 'recorded') found.push(`test ${test}: "${text}" is ${outcome} [${reply}]`);
    }
  }
  return found;
}

describe('an ordinary shift', () => {
  it.each([1, 2, 3, 4, 5, 6])(
    'is recorded without a question, ten tests of each cut deep (seed %i)',
    async (seed) => {
      expect(await notRecorded(seed, 50)).toEqual([]);
    },
  );
});

describe('a lost decimal point', () => {
  /** Four tests that are nearly alike, and a fifth piece on the table. */
  async function afterFourTests(): Promise<Awaited<ReturnType<typeof open>>> {
    const table = await open(SETTINGS);
    const said = ['0.4', '0.45', '0.5', '0.45'].flatMap((silverskin, index) => [
      `tenderloin ${6 + index / 10} lb at 13`,
      `silverskin ${silverskin}`,
      `chain 0.${5 + (index % 2)}`,
      `portions weigh ${(4.6 + index / 10).toFixed(1)}`,
      'done',
      'yes',
    ]);
    for (const [turn, text] of [...said, 'tenderloin 6 lb at 13'].entries()) await take(table, text, turn);
    return table;
  }
  const take = (table: Awaited<ReturnType<typeof open>>, text: string, turn: number) =>
    table.take({
      id: `${turn}`,
      speaker: 'cook',
      at: new Date(Date.UTC(2026, 2, 2) + turn * 60_000).toISOString(),
      text,
      role: 'owner',
    });

  it.each(['silverskin 0.04', 'silverskin 0.05', 'chain 0.05'])('is asked about: %s', async (text) => {
    const table = await afterFourTests();
    const { outcome, entries } = await take(table, text, 100);
    expect({ outcome, entries }).toEqual({ outcome: 'asked', entries: [] });
  });

  it('is recorded when it is said a second time, and no further question is put', async () => {
    const table = await afterFourTests();
    await take(table, 'silverskin 0.04', 100);
    const { outcome, reply } = await take(table, 'silverskin 0.04', 101);
    expect(outcome).toBe('recorded');
    expect(reply).toContain('0.04 lb');
  });

  it('is recorded as the weight that answers the question', async () => {
    const table = await afterFourTests();
    await take(table, 'silverskin 0.04', 100);
    const { outcome, reply } = await take(table, '0.4', 101);
    expect(outcome).toBe('recorded');
    expect(reply).toContain('0.4 lb');
  });

  it.each(['silverskin 0.2', 'silverskin 1.1', 'chain 0.2', 'chain 1.6'])(
    'is not read into a weight that is only unusual: %s',
    async (text) => {
      const table = await afterFourTests();
      expect((await take(table, text, 100)).outcome).toBe('recorded');
    },
  );
});

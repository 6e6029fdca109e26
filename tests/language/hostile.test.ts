// Whatever is typed or heard: no crash, valid JSON, and no amount that was not in the line.
import { expect, test } from 'vitest';
import type { KitchenUnit } from '../../src/core/quantity.ts';
import { judge } from './english.ts';
import { hostileLine } from './hostile-lines.ts';
import { comesFrom, figuresIn, mostNumbersIn } from './numbers-in.ts';
import { seeded, times } from './seeded.ts';

const LINES = 100_000;
const SHOWN = 10;

const AMOUNTS = ['weightLb', 'pricePerLb', 'cost', 'creditPerLb', 'priceEach', 'minutes', 'ratePerHour', 'costEach', 'foodCostPct', 'eachOz', 'count', 'pieces']; // prettier-ignore
const COUNTS = new Set(['count', 'pieces']);
/** A plain decimal above or at 0, as the contract writes amounts. */
const PLAIN = /^(0|[1-9]\d*)(\.\d+)?$/;

type Slots = Readonly<Record<string, unknown>>;

const amountsOf = (entry: Slots): readonly (readonly [slot: string, value: unknown])[] =>
  AMOUNTS.flatMap((slot) =>
    slot in entry ? [entry[slot]].flat().map((value) => [slot, value] as const) : [],
  );

const isWellFormed = ([slot, value]: readonly [string, unknown]): boolean =>
  COUNTS.has(slot)
    ? Number.isSafeInteger(value) && Number(value) > 0
    : typeof value === 'string' && PLAIN.test(value);

/** What is wrong with the reading of a line, if anything is. */
function faultIn(line: string, unit: KitchenUnit): string | undefined {
  const { entries, ask } = judge(line, unit);
  const read = JSON.parse(JSON.stringify({ entries, ask })) as { entries: Slots[]; ask: unknown };
  if (ask !== null && (typeof ask !== 'string' || ask.trim() === '')) return 'an empty question';
  if (read.entries.some((entry) => typeof entry['kind'] !== 'string')) return 'an entry without a kind';
  const amounts = read.entries.flatMap(amountsOf);
  const odd = amounts.find((amount) => !isWellFormed(amount));
  if (odd !== undefined) return `no plain amount: ${JSON.stringify(odd)}`;
  if (amounts.length > mostNumbersIn(line)) return `more amounts than numbers: ${JSON.stringify(entries)}`;
  const figures = figuresIn(line);
  const made = figures && amounts.find(([, value]) => !comesFrom(Number(value), figures));
  return made === undefined ? undefined : `an amount from nowhere: ${JSON.stringify(made)}`;
}

function faultOrCrash(line: string, unit: KitchenUnit): string | undefined {
  try {
    return faultIn(line, unit);
  } catch (error) {
    return `a crash: ${error instanceof Error ? error.message : String(error)}`;
  }
}

function expectNoFaults(lines: Iterable<string>): void {
  const faults: string[] = [];
  let index = 0;
  for (const line of lines) {
    index += 1;
    const fault = faultOrCrash(line, index % 4 === 0 ? 'kg' : 'lb');
    if (fault !== undefined) faults.push(`${JSON.stringify(line.slice(0, 200))}: ${fault}`);
  }
  expect(faults.slice(0, SHOWN), `${faults.length} lines are at fault`).toEqual([]);
}

function* hostileLines(seed: number, count: number): Generator<string> {
  const draw = seeded(seed);
  for (let made = 0; made < count; made += 1) yield hostileLine(draw);
}

test('random and mutated lines', { timeout: 300_000 }, () => {
  expectNoFaults(hostileLines(20_260_306, LINES));
});

test('some of those lines are entries, else the check above would see nothing', () => {
  const read = [...hostileLines(20_260_306, 2000)].filter((line) =>
    judge(line).entries.some((entry) => amountsOf(entry as Slots).length > 0),
  );
  expect(read.length).toBeGreaterThan(100);
});

const PILES = ['one and a half ', 'trim ', 'trim 1.1 ', 'twelve ', 'a pound and ', 'no no ', 'make it ', 'ribeye at ', 'point ', 'oh ', 'half ', '16.2 ', '12 portions 16 oz ', 'and then ', '((((', '[[[[', '1,', '1.', '@$', '?!', "'", 'for to too ']; // prettier-ignore

test.each(PILES)('the same thing over and over: %s', (pile) => {
  expectNoFaults(times(60, (index) => pile.repeat(10 * (index + 1)).slice(0, 20_000)));
});

test('a line of a million letters or digits', () => {
  expectNoFaults([
    'trim '.repeat(200_000),
    '1'.repeat(1_000_000),
    `trim ${'9'.repeat(5000)}`,
    `trim 1.${'1'.repeat(5000)}`,
    'é'.repeat(1_000_000),
  ]);
});

test('nothing is read into a language by a name that every object has', () => {
  for (const name of ['__proto__', 'constructor', 'toString', 'hasOwnProperty', 'valueOf'])
    for (const line of [
      name,
      `${name} 1.1`,
      `trim ${name}`,
      `${name} is 7.40 now`,
      `what's ${name} at`,
      `${name} 14.2 lb at 7.40`,
      `drop the ${name}`,
    ])
      expect(() => JSON.stringify(judge(line)), line).not.toThrow();
  expect(Object.keys(Object.prototype)).toEqual([]);
});

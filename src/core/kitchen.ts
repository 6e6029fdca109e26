// A kitchen as its facts tell it: the tests at hand, what is remembered of each item, and what each speaker
// last did. Closed tests are kept as sums (the pool) and only the newest few whole.
import type { Decimal } from './decimal.ts';
import type { LotId, Recorded, TestId } from './facts.ts';
import { evolveLots, type Lot } from './lots.ts';
import * as memory from './memory.ts';
import { EMPTY_POOL, type Pool, withoutTest, withTest } from './pool.ts';
import { contributions } from './pools.ts';
import type { Grams } from './quantity.ts';
import { recall, recallChoice } from './recall.ts';
import { readSetting, SETTING_NAMES } from './setting.ts';
import type { Settings } from './settings.ts';
import { evolveSpeakers, type Speakers } from './speakers.ts';
import { evolveTest, type Test } from './test.ts';

export type { Settings } from './settings.ts';

export interface Kitchen {
  /** As the kitchen was made. */
  readonly made: Settings;
  /** As they hold now: what was set by word goes before. */
  readonly settings: Settings;
  /** Open tests and the newest closed ones. */
  readonly tests: ReadonlyMap<TestId, Test>;
  readonly nextTest: TestId;
  /** Open lots of ground meat and the newest closed ones. */
  readonly lots: ReadonlyMap<LotId, Lot>;
  readonly nextLot: LotId;
  readonly memory: memory.Memory;
  /** By item; and by what a part of them has in common (see pools.ts). */
  readonly pools: ReadonlyMap<string, Pool>;
  /** Every item and part that was ever named here. */
  readonly items: ReadonlySet<string>;
  readonly parts: ReadonlySet<string>;
  readonly speakers: Speakers;
}

export const newKitchen = (settings: Settings): Kitchen => ({
  made: settings,
  settings,
  tests: new Map(),
  nextTest: 1,
  lots: new Map(),
  nextLot: 1,
  memory: new Map(),
  pools: new Map(),
  items: new Set(),
  parts: new Set(),
  speakers: new Map(),
});

/** How many closed tests stay whole in memory. */
const CLOSED_KEPT = 12;

/** The kitchen after one more fact. */
export function evolve(kitchen: Kitchen, recorded: Recorded): Kitchen {
  const next = recorded.test === undefined ? kitchen : evolveTests(kitchen, recorded, recorded.test);
  return {
    ...withMemory(next, memory.remember(next.memory, recorded)),
    ...names(next, recorded),
    speakers: evolveSpeakers(next.speakers, recorded),
    ...evolveLots(next, recorded),
  };
}

/** The kitchen with what is remembered, and the settings that follow from it. */
export function withMemory(kitchen: Kitchen, remembered: memory.Memory): Kitchen {
  if (remembered === kitchen.memory) return kitchen;
  const isSameChoice = SETTING_NAMES.every((setting) => {
    const key = memory.settingKey(setting);
    return remembered.get(key) === kitchen.memory.get(key);
  });
  const settings = isSameChoice ? kitchen.settings : settingsBy(kitchen.made, remembered);
  return { ...kitchen, memory: remembered, settings };
}

function settingsBy(made: Settings, remembered: memory.Memory): Settings {
  const chosen = SETTING_NAMES.flatMap((setting) => {
    const text = recallChoice(remembered, setting);
    return text === undefined ? [] : [readSetting(setting, text)];
  });
  return Object.assign({}, made, ...chosen) as Settings;
}

export const evolveAll = (kitchen: Kitchen, facts: readonly Recorded[]): Kitchen =>
  facts.reduce(evolve, kitchen);

/** The open tests in the order of opening. */
export const openTests = (kitchen: Kitchen): readonly Test[] =>
  [...kitchen.tests.values()].filter((test) => test.status === 'open').sort((a, b) => a.id - b.id);

export const poolOf = (kitchen: Kitchen, item: string): Pool => kitchen.pools.get(item) ?? EMPTY_POOL;

/** The purchase price of an item per pound that holds at a time, since when, and from whom. */
export const priceOf = (
  kitchen: Kitchen,
  item: string,
  now: string,
): { perLb: Decimal; at: string; supplier?: string } | undefined => {
  const found = recall(kitchen.memory, memory.priceKey(item), now);
  return found && { perLb: found.value.amount, at: found.at, supplier: found.value.supplier };
};

/** The newest ready-cut price of an item per pound, and by the portion where it was said so. */
export const readyCutOf = (
  kitchen: Kitchen,
  item: string,
): { perLb: Decimal; each?: Decimal; eachGrams?: Grams; supplier?: string } | undefined => {
  const found = recall(kitchen.memory, memory.readyCutKey(item));
  return found && { ...found.value, perLb: found.value.amount };
};

export const creditOf = (kitchen: Kitchen, item: string, part: string): Decimal | undefined =>
  recall(kitchen.memory, memory.creditKey(item, part))?.value.amount;

export const tareOf = (kitchen: Kitchen, container: string): Grams | undefined =>
  recall(kitchen.memory, memory.tareKey(container))?.value.amount;

/** The size that portions of an item were last cut to. */
export const sizeOf = (kitchen: Kitchen, item: string): Grams | undefined =>
  recall(kitchen.memory, memory.sizeKey(item))?.value.amount;

/** The rate that minutes are costed at: the last one said that holds by now, else the kitchen's setting. */
export const laborRateOf = (kitchen: Kitchen, now: string): Decimal | undefined =>
  recall(kitchen.memory, memory.LABOR_RATE_KEY, now)?.value.amount ?? kitchen.settings.laborRatePerHour;

function evolveTests(kitchen: Kitchen, recorded: Recorded, id: TestId): Kitchen {
  const before = kitchen.tests.get(id);
  const after = evolveTest(before, recorded);
  const tests = new Map(kitchen.tests).set(id, after);
  if (after.status !== 'open') forgetOldest(tests, id);
  return {
    ...kitchen,
    tests,
    pools: repool(kitchen, before, after),
    nextTest: Math.max(kitchen.nextTest, id + 1),
  };
}

/** Only what is not open, and not the test just touched, may leave the memory. */
function forgetOldest(tests: Map<TestId, Test>, touched: TestId): void {
  const done = [...tests.values()].filter((test) => test.status !== 'open' && test.id !== touched);
  for (const test of done.slice(0, Math.max(0, done.length - CLOSED_KEPT))) tests.delete(test.id);
}

/** Takes the test out of its pools as it was and puts it in as it is. */
function repool(kitchen: Kitchen, before: Test | undefined, after: Test): Kitchen['pools'] {
  const was = before === undefined ? [] : contributions(before, kitchen.settings);
  const is = contributions(after, kitchen.settings);
  if (was.length === 0 && is.length === 0) return kitchen.pools;
  const pools = new Map(kitchen.pools);
  for (const [key, sums] of was) pools.set(key, withoutTest(pools.get(key) ?? EMPTY_POOL, sums));
  for (const [key, sums] of is) pools.set(key, withTest(pools.get(key) ?? EMPTY_POOL, sums));
  return pools;
}

function names(kitchen: Kitchen, { fact, item }: Recorded): Pick<Kitchen, 'items' | 'parts'> {
  const { items, parts } = kitchen;
  const named = fact.type === 'corrected' ? fact.by : fact;
  const part = named.type === 'weighed' || named.type === 'credited' ? named.part : undefined;
  return {
    items: item === undefined || items.has(item) ? items : new Set(items).add(item),
    parts: part === undefined || parts.has(part) ? parts : new Set(parts).add(part),
  };
}

/** The names of items and parts from pairs of kind and name. */
export const decodeNames = (
  names: readonly (readonly ['item' | 'part', string])[],
): Pick<Kitchen, 'items' | 'parts'> => ({
  items: new Set(names.flatMap(([kind, name]) => (kind === 'item' ? [name] : []))),
  parts: new Set(names.flatMap(([kind, name]) => (kind === 'part' ? [name] : []))),
});

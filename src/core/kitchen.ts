// A kitchen as its facts tell it: the tests at hand, what is remembered of each item, and what each speaker
// last did. Closed tests are kept as sums (the pool) and only the newest few whole.
import type { Decimal } from './decimal.ts';
import type { Recorded, TestId } from './facts.ts';
import type { CostSettings } from './figures.ts';
import * as memory from './memory.ts';
import { contribution, EMPTY_POOL, type Pool, withoutTest, withTest } from './pool.ts';
import type { Grams, KitchenUnit } from './quantity.ts';
import { evolveTest, type Test } from './test.ts';

export interface Settings extends CostSettings {
  readonly unit: KitchenUnit;
  /** ISO 4217 code. */
  readonly currency: string;
  /** IANA zone. */
  readonly timezone: string;
  readonly language: string;
  readonly laborRatePerHour?: Decimal;
}

/** One entry of a speaker and the facts that it made, for undo and correction. */
export interface RecentEntry {
  readonly entry: string;
  readonly facts: readonly Recorded[];
}

export interface SpeakerMemory {
  /** The tests that this speaker opened, wrote to or turned to, the last one last. */
  readonly tests: readonly TestId[];
  /** Their newest entries that still stand, newest last. */
  readonly recent: readonly RecentEntry[];
}

export interface Kitchen {
  readonly settings: Settings;
  /** Open tests and the newest closed ones. */
  readonly tests: ReadonlyMap<TestId, Test>;
  readonly nextTest: TestId;
  readonly memory: memory.Memory;
  readonly pools: ReadonlyMap<string, Pool>;
  /** Every item and part that was ever named here. */
  readonly items: ReadonlySet<string>;
  readonly parts: ReadonlySet<string>;
  readonly speakers: ReadonlyMap<string, SpeakerMemory>;
}

export const newKitchen = (settings: Settings): Kitchen => ({
  settings,
  tests: new Map(),
  nextTest: 1,
  memory: new Map(),
  pools: new Map(),
  items: new Set(),
  parts: new Set(),
  speakers: new Map(),
});

/** How many closed tests stay whole in memory, and how many entries of a speaker. */
const CLOSED_KEPT = 12;
export const RECENT_KEPT = 40;
/** How many tests of a speaker are remembered: so many may be closed before the one to go back to is forgotten. */
const TESTS_KEPT = 12;

/** The kitchen after one more fact. */
export function evolve(kitchen: Kitchen, recorded: Recorded): Kitchen {
  const next = recorded.test === undefined ? kitchen : evolveTests(kitchen, recorded, recorded.test);
  return {
    ...next,
    memory: memory.remember(next.memory, recorded),
    ...names(next, recorded),
    speakers: evolveSpeakers(next, recorded),
  };
}

export const evolveAll = (kitchen: Kitchen, facts: readonly Recorded[]): Kitchen =>
  facts.reduce(evolve, kitchen);

/** The open tests in the order of opening. */
export const openTests = (kitchen: Kitchen): readonly Test[] =>
  [...kitchen.tests.values()].filter((test) => test.status === 'open').sort((a, b) => a.id - b.id);

export const poolOf = (kitchen: Kitchen, item: string): Pool => kitchen.pools.get(item) ?? EMPTY_POOL;

/** The newest purchase price of an item per pound, with the time it was said. */
export const priceOf = (kitchen: Kitchen, item: string): { perLb: Decimal; at: string } | undefined => {
  const found = memory.recall(kitchen.memory, memory.priceKey(item));
  return found && { perLb: found.value.amount, at: found.at };
};

/** The newest ready-cut price of an item per pound, and by the portion where it was said so. */
export const readyCutOf = (
  kitchen: Kitchen,
  item: string,
): { perLb: Decimal; each?: Decimal } | undefined => {
  const found = memory.recall(kitchen.memory, memory.readyCutKey(item));
  return found && { perLb: found.value.amount, each: found.value.each };
};

export const creditOf = (kitchen: Kitchen, item: string, part: string): Decimal | undefined =>
  memory.recall(kitchen.memory, memory.creditKey(item, part))?.value.amount;

export const tareOf = (kitchen: Kitchen, container: string): Grams | undefined =>
  memory.recall(kitchen.memory, memory.tareKey(container))?.value.amount;

/** The size that portions of an item were last cut to. */
export const sizeOf = (kitchen: Kitchen, item: string): Grams | undefined =>
  memory.recall(kitchen.memory, memory.sizeKey(item))?.value.amount;

/** The rate that minutes are costed at: the last one said, else the kitchen's setting. */
export const laborRateOf = (kitchen: Kitchen): Decimal | undefined =>
  memory.recall(kitchen.memory, memory.LABOR_RATE_KEY)?.value.amount ?? kitchen.settings.laborRatePerHour;

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

/** Takes the test out of its item's pool as it was and puts it in as it is. */
function repool(kitchen: Kitchen, before: Test | undefined, after: Test): Kitchen['pools'] {
  const was = before && contribution(before, kitchen.settings);
  const is = contribution(after, kitchen.settings);
  if (was === undefined && is === undefined) return kitchen.pools;
  const pools = new Map(kitchen.pools);
  if (before && was) pools.set(before.item, withoutTest(pools.get(before.item) ?? EMPTY_POOL, was));
  if (is) pools.set(after.item, withTest(pools.get(after.item) ?? EMPTY_POOL, is));
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

/** The kitchen with what a speaker last did, from that speaker's newest facts in the order of the log. */
export function rememberSpeaker(kitchen: Kitchen, speaker: string, facts: readonly Recorded[]): Kitchen {
  const fresh: Kitchen = {
    ...kitchen,
    speakers: new Map(kitchen.speakers).set(speaker, { tests: [], recent: [] }),
  };
  return facts.reduce<Kitchen>((so, recorded) => ({ ...so, speakers: evolveSpeakers(so, recorded) }), fresh);
}

/** The names of items and parts from pairs of kind and name. */
export const decodeNames = (
  names: readonly (readonly ['item' | 'part', string])[],
): Pick<Kitchen, 'items' | 'parts'> => ({
  items: new Set(names.flatMap(([kind, name]) => (kind === 'item' ? [name] : []))),
  parts: new Set(names.flatMap(([kind, name]) => (kind === 'part' ? [name] : []))),
});

/** An undo takes the entry that it voids off the list of its speaker and is itself none; a test written to becomes the speaker's. */
function evolveSpeakers(kitchen: Kitchen, recorded: Recorded): Kitchen['speakers'] {
  const { test } = recorded;
  const before = kitchen.speakers.get(recorded.speaker) ?? { tests: [], recent: [] };
  const tests =
    test === undefined
      ? before.tests
      : [...before.tests.filter((each) => each !== test), test].slice(-TESTS_KEPT);
  const after = { tests, recent: evolveRecent(before.recent, recorded) };
  return new Map(kitchen.speakers).set(recorded.speaker, after);
}

function evolveRecent(recent: SpeakerMemory['recent'], recorded: Recorded): SpeakerMemory['recent'] {
  const { fact, entry } = recorded;
  if (fact.type === 'turned') return recent;
  if (fact.type === 'undone' && fact.bare) return recent.filter((each) => each.entry !== fact.target);
  const last = recent.at(-1);
  if (last?.entry === entry) return [...recent.slice(0, -1), { entry, facts: [...last.facts, recorded] }];
  return [...recent.slice(-RECENT_KEPT + 1), { entry, facts: [recorded] }];
}

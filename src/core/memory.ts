// What a kitchen remembers beyond a test: prices, ready-cut prices, credits, container weights, the labour rate.
// One ledger a key; which fact writes to which key stands in `remembered`, and nowhere else.
import type { PlainFact, Recorded } from './facts.ts';
import { type Chosen, type Ledger, newest, type Remembered, write } from './ledger.ts';
import { perLbOf } from './money.ts';
import type { SettingName } from './setting.ts';

export type Memory = ReadonlyMap<string, Ledger>;

export const priceKey = (item: string): string => `price:${item}`;
export const readyCutKey = (item: string): string => `readyCut:${item}`;
export const creditKey = (item: string, part: string): string => `credit:${item}:${part}`;
export const tareKey = (container: string): string => `tare:${container}`;
/** The size that portions of an item were last cut to. */
export const sizeKey = (item: string): string => `size:${item}`;
export const LABOR_RATE_KEY = 'laborRate';
export const settingKey = (setting: SettingName): string => `setting:${setting}`;

type Line = readonly [key: string, value: Remembered | Chosen];

/** What a fact about an item leaves in the memory. */
function remembered(fact: PlainFact, item: string | undefined): readonly Line[] {
  switch (fact.type) {
    case 'received': {
      const amount = fact.perLb ?? (fact.cost === undefined ? undefined : perLbOf(fact.cost, fact.grams));
      return amount === undefined ? [] : [[priceKey(fact.item), { amount }]];
    }
    case 'priced':
      return [[priceKey(fact.item), { amount: fact.perLb }]];
    case 'readyCutPriced':
      return [[readyCutKey(fact.item), { amount: fact.perLb, each: fact.each, eachGrams: fact.eachGrams }]];
    case 'credited':
      return [[creditKey(fact.item, fact.part), { amount: fact.perLb }]];
    case 'weighed':
      return fact.creditPerLb === undefined || item === undefined
        ? []
        : [[creditKey(item, fact.part), { amount: fact.creditPerLb }]];
    case 'tared':
      return [[tareKey(fact.container), { amount: fact.grams }]];
    case 'labored':
      return fact.ratePerHour === undefined ? [] : [[LABOR_RATE_KEY, { amount: fact.ratePerHour }]];
    case 'portioned':
      return fact.eachGrams === undefined || item === undefined
        ? []
        : [[sizeKey(item), { amount: fact.eachGrams }]];
    case 'chosen':
      return [[settingKey(fact.setting), { text: fact.value }]];
    case 'listed':
    case 'packed':
    case 'removed':
    case 'noted':
    case 'turned':
    case 'closed':
    case 'dropped':
    case 'undone':
    case 'sold':
    case 'ended':
    case 'cooked':
    case 'served':
      return [];
  }
}

/** The memory after one more fact; the same object where the fact leaves nothing. */
export function remember(memory: Memory, recorded: Recorded): Memory {
  const { fact } = recorded;
  if (fact.type === 'undone') return cover(memory, recorded, fact.target);
  if (fact.type !== 'corrected') return writeLines(memory, recorded, remembered(fact, recorded.item));
  return writeLines(cover(memory, recorded, fact.target), recorded, remembered(fact.by, recorded.item));
}

/** The amount that holds for a key, and when it was said. */
export function recall(memory: Memory, key: string): { value: Remembered; at: string } | undefined {
  const found = newest(memory.get(key) ?? []);
  return found !== undefined && 'amount' in found.value ? { value: found.value, at: found.at } : undefined;
}

/** What a setting was set to by word, where it was. */
export function recallChoice(memory: Memory, setting: SettingName): string | undefined {
  const found = newest(memory.get(settingKey(setting)) ?? []);
  return found !== undefined && 'text' in found.value ? found.value.text : undefined;
}

function writeLines(memory: Memory, { entry, at }: Recorded, lines: readonly Line[]): Memory {
  if (lines.length === 0) return memory;
  const after = new Map(memory);
  for (const [key, value] of lines) after.set(key, write(after.get(key) ?? [], { entry, at, value }));
  return after;
}

function cover(memory: Memory, { entry, at }: Recorded, target: string): Memory {
  const touched = [...memory].filter(([, ledger]) => ledger.some((line) => line.entry === target));
  if (touched.length === 0) return memory;
  const after = new Map(memory);
  for (const [key, ledger] of touched) after.set(key, write(ledger, { entry, at, covers: target }));
  return after;
}

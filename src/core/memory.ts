// What a kitchen remembers beyond a test: prices, ready-cut prices, credits, container weights, the labour rate.
// A reminder is remembered the same way, so that setting and cancelling can be taken back. One ledger a key; which fact writes to which key stands in `remembered`, and nowhere else.
import type { FactOf, PlainFact, Recorded } from './facts.ts';
import { type Chosen, type Ledger, newest, type Remembered, write } from './ledger.ts';
import { perLbOf } from './money.ts';
import { heardOf, rung, type Standing, standingIn, STANDING_KEY } from './alarm.ts';
import { CANCELLED, isLate, LATE_KEY, reminderKey, reminderOfKey, toldKey } from './reminder.ts';
import type { SettingName } from './setting.ts';
import { summaryOfKey, summaryToldKey } from './summary-due.ts';

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
function remembered(
  fact: PlainFact,
  { item, speaker, at }: Pick<Recorded, 'item' | 'speaker' | 'at'>,
): readonly Line[] {
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
    case 'reminderSet': {
      const { when, instant, text, repeat, team } = fact;
      const to = team === true ? undefined : speaker;
      return [[reminderKey(fact.number), { text: JSON.stringify({ when, instant, text, repeat, to }) }]];
    }
    case 'reminderCancelled':
      return [[reminderKey(fact.number), { text: CANCELLED }]];
    case 'fired':
      return toldLines(fact, at);
    case 'acknowledged':
    case 'listed':
    case 'packed':
    case 'removed':
    case 'noted':
    case 'turned':
    case 'closed':
    case 'dropped':
    case 'undone':
      return [];
  }
}

/** What is told is kept where it is looked for before it would be told again. */
function toldLines({ key, dueAt }: FactOf<'fired'>, at: string): readonly Line[] {
  const reminder = reminderOfKey(key);
  if (reminder !== undefined) {
    const late: readonly Line[] = isLate(dueAt, at) ? [[LATE_KEY, { text: key }]] : [];
    return [[toldKey(reminder.number), { text: reminder.told }], ...late];
  }
  const summary = summaryOfKey(key);
  return summary === undefined ? [] : [[summaryToldKey(summary.span), { text: summary.date }]];
}

/** The memory after one more fact; the same object where the fact leaves nothing. */
export function remember(memory: Memory, recorded: Recorded): Memory {
  const { fact } = recorded;
  if (fact.type === 'undone') return cover(memory, recorded, fact.target);
  if (fact.type === 'fired' && fact.alarm)
    return writeStanding(memory, recorded, rung(standingIn(memory), recorded));
  if (fact.type === 'acknowledged')
    return writeStanding(memory, recorded, heardOf(standingIn(memory), fact.keys));
  if (fact.type !== 'corrected') return writeLines(memory, recorded, remembered(fact, recorded));
  return writeLines(cover(memory, recorded, fact.target), recorded, remembered(fact.by, recorded));
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

const writeStanding = (memory: Memory, recorded: Recorded, standing: readonly Standing[]): Memory =>
  writeLines(memory, recorded, [[STANDING_KEY, { text: JSON.stringify(standing) }]]);

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

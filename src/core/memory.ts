// What a kitchen remembers beyond a test: prices, ready-cut prices, credits, container weights, the labour rate.
// A reminder is remembered the same way, so that setting and cancelling can be taken back. One ledger a key; which fact writes to which key stands in `remembered`, and nowhere else.
import type { FactOf, PlainFact, Recorded } from './facts.ts';
import { type Chosen, type Ledger, type LedgerLine, type Remembered, write, writeKeeping } from './ledger.ts';
import { perLbOf } from './money.ts';
import { heardOf, rung, type Standing, standingIn, STANDING_KEY, unheardAgain } from './alarm.ts';
import { CANCELLED, isLate, LATE_KEY, reminderKey, reminderOfKey, toldKey } from './reminder.ts';
import type { SettingName } from './setting.ts';
import { CHECKS_KEPT, CHECKS_KEY, checkText } from './thermometer-checks.ts';
import { READINGS_KEPT, READINGS_KEY, readingText } from './readings-log.ts';
import { watched } from './watched.ts';
import { summaryOfKey, summaryToldKey } from './summary-due.ts';

export type Memory = ReadonlyMap<string, Ledger>;

const PRICE = 'price:';
export const priceKey = (item: string): string => `${PRICE}${item}`;
export const readyCutKey = (item: string): string => `readyCut:${item}`;
export const creditKey = (item: string, part: string): string => `credit:${item}:${part}`;
/** Beside the newest price of all, the newest of each supplier; of ready-cut portions, of each supplier and size. */
export const priceBookKey = (item: string, supplier: string): string => `${priceKey(item)}\n${supplier}`;
export const readyCutBookKey = (item: string, supplier = '', grams = ''): string =>
  `${readyCutKey(item)}\n${supplier}\n${grams}`;
/** The items that a price is known of, in the order of their names. */
export const itemsPriced = (memory: Memory): readonly string[] =>
  [...memory.keys()]
    .flatMap((key) => (key.startsWith(PRICE) && !key.includes('\n') ? [key.slice(PRICE.length)] : []))
    .sort();
export const tareKey = (container: string): string => `tare:${container}`;
/** The size that portions of an item were last cut to. */
export const sizeKey = (item: string): string => `size:${item}`;
export const LABOR_RATE_KEY = 'laborRate';
export const settingKey = (setting: SettingName): string => `setting:${setting}`;
export const aloudKey = (speaker: string): string => `aloud:${speaker}`;

type Line = readonly [key: string, value: Remembered | Chosen];

/** What a fact about an item leaves in the memory. */
function remembered(fact: PlainFact, recorded: Recorded): readonly Line[] {
  const { item, speaker, at } = recorded;
  switch (fact.type) {
    case 'received': {
      const amount = fact.perLb ?? (fact.cost === undefined ? undefined : perLbOf(fact.cost, fact.grams));
      return amount === undefined ? [] : priceLines(fact.item, { amount, supplier: fact.supplier });
    }
    case 'priced':
      return priceLines(fact.item, { amount: fact.perLb, supplier: fact.supplier, from: fact.from });
    case 'readyCutPriced':
      return readyCutLines(fact);
    case 'credited':
      return [[creditKey(fact.item, fact.part), { amount: fact.perLb }]];
    case 'weighed':
      return fact.creditPerLb === undefined || item === undefined
        ? []
        : [[creditKey(item, fact.part), { amount: fact.creditPerLb }]];
    case 'tared':
      return [[tareKey(fact.container), { amount: fact.grams }]];
    case 'labored':
      return fact.ratePerHour === undefined
        ? []
        : [[LABOR_RATE_KEY, { amount: fact.ratePerHour, from: fact.from }]];
    case 'portioned':
      return fact.eachGrams === undefined || item === undefined
        ? []
        : [[sizeKey(item), { amount: fact.eachGrams }]];
    case 'chosen':
      return [[settingKey(fact.setting), { text: fact.value }]];
    case 'thermometerChecked':
      return [[CHECKS_KEY, { text: checkText(fact) }]];
    case 'voiceChosen':
      return [[aloudKey(speaker), { text: fact.when }]];
    case 'temperatureRead':
      return [[READINGS_KEY, { text: readingText(fact, recorded) }], ...watched(fact, recorded)];
    case 'binned':
    case 'coolingBegun':
    case 'cleaned':
      return watched(fact, recorded);
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
    case 'ground':
    case 'sourced':
    case 'carriedOver':
    case 'batchBegun':
    case 'lotEnded':
    case 'batchEnded':
    case 'sold':
    case 'ended':
    case 'cooked':
    case 'served':
      return [];
  }
}

function priceLines(item: string, value: Remembered): readonly Line[] {
  const all: Line = [priceKey(item), value];
  return value.supplier === undefined ? [all] : [all, [priceBookKey(item, value.supplier), value]];
}

function readyCutLines({
  item,
  perLb,
  each,
  eachGrams,
  supplier,
}: FactOf<'readyCutPriced'>): readonly Line[] {
  const value = { amount: perLb, each, eachGrams, supplier };
  const all: Line = [readyCutKey(item), value];
  if (supplier === undefined && eachGrams === undefined) return [all];
  return [all, [readyCutBookKey(item, supplier, eachGrams?.toString()), value]];
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
  if (fact.type === 'undone') {
    const unheard = unheardAgain(standingIn(memory), { target: fact.target, at: recorded.at });
    return unheard === undefined
      ? cover(memory, recorded, fact.target)
      : writeStanding(memory, recorded, unheard);
  }
  if (fact.type === 'fired' && fact.alarm)
    return writeStanding(memory, recorded, rung(standingIn(memory), recorded));
  if (fact.type === 'acknowledged')
    return writeStanding(memory, recorded, heardOf(standingIn(memory), fact.keys, recorded));
  if (fact.type !== 'corrected') return writeLines(memory, recorded, remembered(fact, recorded));
  return writeLines(cover(memory, recorded, fact.target), recorded, remembered(fact.by, recorded));
}

const writeStanding = (memory: Memory, recorded: Recorded, standing: readonly Standing[]): Memory =>
  writeLines(memory, recorded, [[STANDING_KEY, { text: JSON.stringify(standing) }]]);

function writeLines(memory: Memory, { entry, at }: Recorded, lines: readonly Line[]): Memory {
  if (lines.length === 0) return memory;
  const after = new Map(memory);
  for (const [key, value] of lines) after.set(key, writeAt(key, after.get(key) ?? [], { entry, at, value }));
  return after;
}

/** What is listed is kept for longer than what can only be taken back. */
const KEPT: ReadonlyMap<string, number> = new Map([
  [CHECKS_KEY, CHECKS_KEPT],
  [READINGS_KEY, READINGS_KEPT],
]);

function writeAt(key: string, ledger: Ledger, line: LedgerLine): Ledger {
  const kept = KEPT.get(key);
  return kept === undefined ? write(ledger, line) : writeKeeping(kept, ledger, line);
}

function cover(memory: Memory, { entry, at }: Recorded, target: string): Memory {
  const touched = [...memory].filter(([, ledger]) => ledger.some((line) => line.entry === target));
  if (touched.length === 0) return memory;
  const after = new Map(memory);
  for (const [key, ledger] of touched) after.set(key, writeAt(key, ledger, { entry, at, covers: target }));
  return after;
}

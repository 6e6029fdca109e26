// What the memory of a kitchen says: what holds for a key now, what will hold, what was set by word.
import { type Held, newest, type Remembered } from './ledger.ts';
import { type Memory, settingKey } from './memory.ts';
import type { SettingName } from './setting.ts';

export interface Recalled {
  readonly value: Remembered;
  readonly at: string;
}

/** The amount that holds for a key, and since when; what has a date of its own only with the time of asking. */
export const recall = (memory: Memory, key: string, now?: string): Recalled | undefined =>
  amountOf(newest(memory.get(key) ?? [], now));

/** The amounts of a key that come into force after a time, the next first. */
export function recallComing(memory: Memory, key: string, now: string): readonly Recalled[] {
  const dates = (memory.get(key) ?? []).flatMap(({ value }) =>
    value !== undefined && 'from' in value ? (value.from ?? []) : [],
  );
  const coming = [...new Set(dates)].filter((date) => date > now).sort();
  return coming.flatMap((date) => {
    const found = recall(memory, key, date);
    return found?.at === date ? [found] : [];
  });
}

const amountOf = (held: Held | undefined): Recalled | undefined =>
  held !== undefined && 'amount' in held.value ? { value: held.value, at: held.at } : undefined;

/** What holds of each key that begins alike: an item's prices by supplier, its ready-cut prices by supplier and size. */
export function recallAll(memory: Memory, begins: string, now: string): readonly Recalled[] {
  const keys = [...memory.keys()].filter((key) => key.startsWith(begins)).sort();
  return keys.flatMap((key) => recall(memory, key, now) ?? []);
}

/** What a setting was set to by word, where it was. */
export function recallChoice(memory: Memory, setting: SettingName): string | undefined {
  const found = newest(memory.get(settingKey(setting)) ?? []);
  return found !== undefined && 'text' in found.value ? found.value.text : undefined;
}

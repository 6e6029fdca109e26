// What a kitchen sets by word. In the log and in the memory a setting is its name and a short text; what the text may be, and
// what it makes of the settings, stands in the table below and nowhere else. A setting is remembered like a price, so that it
// can be taken back.
import { z } from 'zod';
import { decimal } from './decimal.ts';
import { mayBeGroundLimit } from './heat.ts';
import type { Settings } from './kitchen.ts';

const yesOrNo = z.enum(['yes', 'no']).transform((text) => text === 'yes');

const readers = {
  cuttersSeeCosts: yesOrNo.transform((value) => ({ cuttersSeeCosts: value })),
  laborAvoidable: yesOrNo.transform((value) => ({ laborAvoidable: value })),
  /** °F. Never below the published minimum (see heat.ts), never above what water can have. */
  groundCookF: z
    .string()
    .refine((text) => /^\d{3}(\.\d{1,2})?$/.test(text) && mayBeGroundLimit(decimal(text)))
    .transform((text) => ({ groundCookF: decimal(text) })),
} as const satisfies Readonly<Record<string, z.ZodType<Partial<Settings>, string>>>;

export type SettingName = keyof typeof readers;

export const SETTING_NAMES = Object.keys(readers) as readonly SettingName[];

/** Whether this version knows the setting and what it is set to. */
export const isSetting = (name: string, text: string): boolean =>
  Object.hasOwn(readers, name) && readers[name as SettingName].safeParse(text).success;

/** What a setting makes of the settings. Throws on a text that it can't be. */
export const readSetting = (name: SettingName, text: string): Partial<Settings> => readers[name].parse(text);

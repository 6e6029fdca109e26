// What a kitchen sets by word. In the log and in the memory a setting is its name and a short text; what the text may be, and
// what it makes of the settings, stands in the table below and nowhere else. A setting is remembered like a price, so that it
// can be taken back.
import { z } from 'zod';
import { decimal } from './decimal.ts';
import { mayBeColdLimit, mayBeGroundLimit } from './heat.ts';
import type { Settings } from './kitchen.ts';
import { zoneNamed } from './local-time.ts';

const yesOrNo = z.enum(['yes', 'no']).transform((text) => text === 'yes');

/** A weight in grams, above 0. */
const grams = z
  .string()
  .regex(/^\d{1,4}(\.\d{1,20})?$/)
  .transform(decimal)
  .refine((value) => value.gt(0));
const CLOCK = /^([01]\d|2[0-3]):[0-5]\d$/;
const OFF = 'off';
export const WEEKDAYS = [
  'monday',
  'tuesday',
  'wednesday',
  'thursday',
  'friday',
  'saturday',
  'sunday',
  OFF,
] as const;
/** Sooner nobody could have come from the walk-in; later it is no alarm. */
const [LEAST_MINUTES, MOST_MINUTES] = [2, 120];

/** A recording is of a person: nobody needs it for longer. */
const MOST_DAYS = 30;

const minutes = z
  .string()
  .regex(/^\d{1,3}$/)
  .refine((text) => Number(text) >= LEAST_MINUTES && Number(text) <= MOST_MINUTES);

const readers = {
  cuttersSeeCosts: yesOrNo.transform((value) => ({ cuttersSeeCosts: value })),
  laborAvoidable: yesOrNo.transform((value) => ({ laborAvoidable: value })),
  /** °F. Never below the published minimum (see heat.ts), never above what water can have. */
  groundCookF: z
    .string()
    .refine((text) => /^\d{3}(\.\d{1,2})?$/.test(text) && mayBeGroundLimit(decimal(text)))
    .transform((text) => ({ groundCookF: decimal(text) })),
  /** °F. Never above the published cold holding. */
  coldF: z
    .string()
    .refine((text) => /^\d{2}(\.\d{1,2})?$/.test(text) && mayBeColdLimit(decimal(text)))
    .transform((text) => ({ coldF: decimal(text) })),
  cookAgainMinutes: minutes.transform((text) => ({ cookAgainMinutes: Number(text) })),
  portionTolerance: grams.transform((value) => ({ portionTolerance: value })),
  timezone: z
    .string()
    .refine((text) => zoneNamed(text) === text)
    .transform((timezone) => ({ timezone })),
  summaryAt: z
    .string()
    .refine((text) => CLOCK.test(text) || text === OFF)
    .transform((text) => ({ summaryAt: text === OFF ? undefined : text })),
  weekSummaryOn: z.enum(WEEKDAYS).transform((day) => ({
    weekSummaryOn: day === OFF ? undefined : WEEKDAYS.indexOf(day) + 1,
  })),
  summaryTo: z
    .string()
    .regex(/^\p{L}[\p{L}\p{N} .'-]{0,39}$/u)
    .transform((text) => ({ summaryTo: text === 'team' ? undefined : text })),
  tellsEmptyDay: yesOrNo.transform((value) => ({ tellsEmptyDay: value })),
  escalateMinutes: minutes.transform((text) => ({ escalateMinutes: Number(text) })),
  /** For how many days voice notes are kept. */
  keepsRecordings: z
    .string()
    .refine((text) => text === OFF || (/^[1-9]\d?$/.test(text) && Number(text) <= MOST_DAYS))
    .transform((text) => ({ keepsRecordings: text === OFF ? undefined : Number(text) })),
  secondPerson: z
    .string()
    .regex(/^\p{L}[\p{L}\p{N} .'-]{0,39}$/u)
    .transform((text) => ({ secondPerson: text === 'nobody' ? undefined : text })),
} as const satisfies Readonly<Record<string, z.ZodType<Partial<Settings>, string>>>;

export type SettingName = keyof typeof readers;

export const SETTING_NAMES = Object.keys(readers) as readonly SettingName[];

/** Whether this version knows the setting and what it is set to. */
export const isSetting = (name: string, text: string): boolean =>
  Object.hasOwn(readers, name) && readers[name as SettingName].safeParse(text).success;

/** What a setting makes of the settings. Throws on a text that it can't be. */
export const readSetting = (name: SettingName, text: string): Partial<Settings> => readers[name].parse(text);

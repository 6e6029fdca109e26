// The environment is all the configuration, and this is the only file that reads it.
import { z } from 'zod';

const zone = z.string().refine(isZone, 'is not a time zone (like America/Chicago)');

const schema = z.object({
  DATABASE_URL: z
    .string()
    .regex(/^sqlite:.+/, 'must be sqlite:PATH')
    .default('sqlite:data/blockhand.db'),
  KITCHEN_UNIT: z.enum(['lb', 'kg'], 'must be lb or kg').default('lb'),
  KITCHEN_CURRENCY: z
    .string()
    .refine(isCurrency, 'must be a currency code of three letters, like USD')
    .default('USD'),
  KITCHEN_TIMEZONE: zone.optional(),
  KITCHEN_LANGUAGE: z.enum(['en'], 'must be one of: en').default('en'),
  LOG_LEVEL: z
    .enum(['fatal', 'error', 'warn', 'info', 'debug', 'trace', 'silent'], "must be one of pino's levels")
    .default('info'),
});

export interface Config {
  readonly databasePath: string;
  readonly kitchen: {
    readonly unit: 'lb' | 'kg';
    readonly currency: string;
    readonly timezone: string;
    readonly language: 'en';
  };
  /** Whether the zone is the machine's, because none was set. */
  readonly zoneAssumed: boolean;
}

/** A setting that is missing or bad: its message names the variable. */
export class ConfigError extends Error {}

export function readConfig(environment: Readonly<Record<string, string | undefined>> = process.env): Config {
  const set = Object.fromEntries(
    Object.entries(environment).filter(([, value]) => value !== undefined && value !== ''),
  );
  const read = schema.safeParse(set);
  if (!read.success) {
    const [issue] = read.error.issues;
    throw new ConfigError(`${String(issue?.path[0] ?? 'environment')} ${issue?.message ?? 'is wrong'}`);
  }
  const {
    DATABASE_URL,
    KITCHEN_UNIT: unit,
    KITCHEN_CURRENCY: currency,
    KITCHEN_TIMEZONE,
    KITCHEN_LANGUAGE: language,
  } = read.data;
  const timezone = KITCHEN_TIMEZONE ?? Intl.DateTimeFormat().resolvedOptions().timeZone;
  return {
    databasePath: DATABASE_URL.slice('sqlite:'.length),
    kitchen: { unit, currency, timezone, language },
    zoneAssumed: KITCHEN_TIMEZONE === undefined,
  };
}

function isZone(name: string): boolean {
  try {
    return Intl.DateTimeFormat('en', { timeZone: name }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
}

function isCurrency(code: string): boolean {
  return /^[A-Z]{3}$/.test(code) && Intl.supportedValuesOf('currency').includes(code);
}

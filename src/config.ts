// The environment is all the configuration, and this is the only file that reads it.
import { readFileSync } from 'node:fs';
import { z } from 'zod';

const zone = z.string().refine(isZone, 'is not a time zone (like America/Chicago)');

const token = z.string().regex(/^\d+:[\w-]+$/, 'must be a token like 123456:ABC-def, as the service gave it');

const schema = z.object({
  TELEGRAM_BOT_TOKEN: token.optional(),
  TELEGRAM_BOT_TOKEN_FILE: z.string().transform(contentOf).pipe(token).optional(),
  TELEGRAM_API_ROOT: z
    .url({ protocol: /^https?$/, error: 'must be an address like https://host' })
    .optional(),
  OWNER_TELEGRAM_ID: z
    .string()
    .regex(/^[1-9]\d{0,15}$/, 'must be a number, the id of a person')
    .transform(Number)
    .optional(),
  PORT: z
    .string()
    .regex(/^\d{1,5}$/, 'must be a port number')
    .transform(Number)
    .refine((port) => port > 0 && port < 65_536, 'must be a port number')
    .optional(),
  HOST: z.string().default('127.0.0.1'),
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
  /** Where it is set, the bot runs in place of the chat in the terminal. */
  readonly telegram?: { readonly token: string; readonly apiRoot?: string; readonly owner?: number };
  /** Where health is told; nowhere by default. */
  readonly health?: { readonly port: number; readonly host: string };
  readonly logLevel: string;
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
    ...telegramOf(read.data),
    ...(read.data.PORT === undefined ? {} : { health: { port: read.data.PORT, host: read.data.HOST } }),
    logLevel: read.data.LOG_LEVEL,
  };
}

function telegramOf(data: z.output<typeof schema>): Pick<Config, 'telegram'> {
  const token = data.TELEGRAM_BOT_TOKEN ?? data.TELEGRAM_BOT_TOKEN_FILE;
  if (token === undefined) return {};
  const { TELEGRAM_API_ROOT: apiRoot, OWNER_TELEGRAM_ID: owner } = data;
  return {
    telegram: {
      token,
      ...(apiRoot === undefined ? {} : { apiRoot: apiRoot.replace(/\/$/, '') }),
      ...(owner === undefined ? {} : { owner }),
    },
  };
}

/** A secret in a file of its own does not show in the list of processes. */
function contentOf(path: string, context: z.RefinementCtx): string {
  try {
    return readFileSync(path, 'utf8').trim();
  } catch {
    context.addIssue({ code: 'custom', message: 'is not a file that can be read' });
    return z.NEVER;
  }
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

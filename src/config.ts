// The environment is all the configuration, and this is the only file that reads it.
import { readFileSync } from 'node:fs';
import { z } from 'zod';

const zone = z.string().refine(isZone, 'is not a time zone (like America/Chicago)');

const token = z.string().regex(/^\d+:[\w-]+$/, 'must be a token like 123456:ABC-def, as the service gave it');

/** The service takes these characters and up to 256 of them; fewer than 16 can be guessed. */
const secret = z.string().regex(/^[\w-]{16,256}$/, 'must be 16 to 256 letters, digits, "_" or "-"');

const schema = z.object({
  TELEGRAM_BOT_TOKEN: token.optional(),
  TELEGRAM_BOT_TOKEN_FILE: z.string().transform(contentOf).pipe(token).optional(),
  TELEGRAM_API_ROOT: z
    .url({ protocol: /^https?$/, error: 'must be an address like https://host' })
    .optional(),
  TELEGRAM_WEBHOOK_URL: z
    .string()
    .refine(isHookAddress, 'must be an address like https://host/path, with nothing but host, port and path')
    .transform((address) => new URL(address).href)
    .optional(),
  TELEGRAM_WEBHOOK_SECRET: secret.optional(),
  TELEGRAM_WEBHOOK_SECRET_FILE: z.string().transform(contentOf).pipe(secret).optional(),
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
  SPEECH_ENGINE: z
    .string()
    .regex(/^(embedded|none|local:.+|https?:.+)$/, 'must be embedded, local:DIR, http:URL or none')
    .refine((engine) => !engine.startsWith('http') || URL.canParse(serverOf(engine)), 'must be http:URL')
    .default('embedded'),
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
  readonly telegram?: {
    readonly token: string;
    readonly apiRoot?: string;
    readonly owner?: number;
    /** Where updates are brought; where it is absent they are polled for. */
    readonly webhook?: { readonly url: string; readonly secret: string };
  };
  /** Where health, metrics and the webhook are served; nowhere by default. */
  readonly server?: { readonly port: number; readonly host: string };
  readonly speech: SpeechChoice;
  readonly logLevel: string;
}

export type SpeechChoice =
  | { readonly engine: 'embedded' | 'none' }
  | { readonly engine: 'local'; readonly folder: string }
  | { readonly engine: 'http'; readonly url: string };

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
    ...(read.data.PORT === undefined ? {} : { server: { port: read.data.PORT, host: read.data.HOST } }),
    speech: speechOf(read.data.SPEECH_ENGINE),
    logLevel: read.data.LOG_LEVEL,
  };
}

type Settings = z.output<typeof schema>;

function telegramOf(data: Settings): Pick<Config, 'telegram'> {
  const webhook = webhookOf(data);
  const token = data.TELEGRAM_BOT_TOKEN ?? data.TELEGRAM_BOT_TOKEN_FILE;
  if (token === undefined) return {};
  const { TELEGRAM_API_ROOT: apiRoot, OWNER_TELEGRAM_ID: owner } = data;
  return {
    telegram: {
      token,
      ...(apiRoot === undefined ? {} : { apiRoot: apiRoot.replace(/\/$/, '') }),
      ...(owner === undefined ? {} : { owner }),
      ...(webhook === undefined ? {} : { webhook }),
    },
  };
}

/** All of it or nothing: without a secret anybody could bring updates, without a port nobody. */
function webhookOf(data: Settings): { readonly url: string; readonly secret: string } | undefined {
  const { TELEGRAM_WEBHOOK_URL: url, PORT: port } = data;
  const secret = data.TELEGRAM_WEBHOOK_SECRET ?? data.TELEGRAM_WEBHOOK_SECRET_FILE;
  if (url === undefined && secret === undefined) return undefined;
  if (url === undefined) throw new ConfigError('TELEGRAM_WEBHOOK_URL is needed with TELEGRAM_WEBHOOK_SECRET');
  if (secret === undefined)
    throw new ConfigError('TELEGRAM_WEBHOOK_SECRET is needed with TELEGRAM_WEBHOOK_URL');
  if (port === undefined) throw new ConfigError('PORT is needed with TELEGRAM_WEBHOOK_URL');
  return { url, secret };
}

const OWN_PATHS = ['/livez', '/readyz', '/metrics'];
const LOOPBACK = ['localhost', '127.0.0.1', '[::1]'];

/** Without TLS only on this machine, for a server of the Bot API that runs beside the bot: the secret is in each request. */
function isHookAddress(address: string): boolean {
  if (!URL.canParse(address)) return false;
  const { protocol, hostname, pathname, origin, href } = new URL(address);
  const isSafe = protocol === 'https:' || (protocol === 'http:' && LOOPBACK.includes(hostname));
  return isSafe && href === origin + pathname && !OWN_PATHS.includes(pathname);
}

function speechOf(setting: string): SpeechChoice {
  if (setting === 'embedded' || setting === 'none') return { engine: setting };
  if (setting.startsWith('local:')) return { engine: 'local', folder: setting.slice('local:'.length) };
  return { engine: 'http', url: serverOf(setting) };
}

/** Written "http:https://host/path"; the plain address is understood too. */
function serverOf(setting: string): string {
  const inner = setting.slice('http:'.length);
  return /^https?:\/\//.test(inner) ? inner : setting;
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

// From a reply as data to words: the wording of the language, the units and currency of the kitchen, rounded half-up here
// and nowhere else.
import { FluentBundle, FluentResource } from '@fluent/bundle';
import { type Decimal, roundTo } from '../core/decimal.ts';
import { degreeUnit, toC } from '../core/heat.ts';
import { perUnit } from '../core/money.ts';
import { fromGrams, type Grams, type KitchenUnit, portionUnit } from '../core/quantity.ts';
import type { Reply, ReplyValue } from '../core/reply.ts';

export interface Reader {
  readonly unit: KitchenUnit;
  readonly currency: string;
  readonly timezone: string;
  readonly seesCosts: boolean;
}

/** Renders replies for one reader: a line each, those that the reader may not see left out. */
export type Render = (replies: readonly Reply[], reader: Reader) => string;

/** Throws where the wording has an error in it. */
export function renderer(language: string, wording: string): Render {
  const bundle = new FluentBundle(language, { useIsolating: false });
  const [error] = bundle.addResource(new FluentResource(wording));
  if (error !== undefined) throw error;
  return (replies, reader) =>
    replies.flatMap((reply) => renderOne({ bundle, language, reader }, reply) ?? []).join('\n');
}

/** The names of all messages: tests hold them against what the code says. */
export const messageNames = (wording: string): readonly string[] =>
  new FluentResource(wording).body.map(({ id }) => id);

interface Voice {
  readonly bundle: FluentBundle;
  readonly language: string;
  readonly reader: Reader;
}

function renderOne(voice: Voice, reply: Reply): string | undefined {
  if (reply.cost === true && !voice.reader.seesCosts) return reply.instead && renderOne(voice, reply.instead);
  const pattern = voice.bundle.getMessage(reply.id)?.value;
  if (pattern == null) throw new Error(`no wording for ${reply.id}`);
  const args = Object.fromEntries(
    Object.entries(reply.args ?? {}).map(([name, value]) => [name, renderValue(voice, value)]),
  );
  const text = voice.bundle.formatPattern(pattern, args).trim();
  return text === '' ? undefined : text;
}

const JOINTS = { comma: ', ', semicolon: '; ', space: ' ', line: '\n' } as const;

function renderValue(voice: Voice, value: ReplyValue): string | number {
  if (typeof value !== 'object') return value;
  const { reader } = voice;
  switch (value.is) {
    case 'weight':
      return weightText(value.grams, reader.unit);
    case 'size':
      return sizeText(value.grams, reader.unit);
    case 'money':
      return moneyText(voice, value.amount, value.exact);
    case 'price':
      return `${moneyText(voice, perUnit(value.perLb, reader.unit), value.exact)}/${reader.unit}`;
    case 'percent':
      return `${roundTo(value.value, 1).toString()} %`;
    case 'number':
      return roundTo(value.value, value.places).toString();
    case 'name':
      return value.name;
    case 'date':
      return dateText(voice, value.at);
    case 'moment':
      return momentText(voice, value.at);
    case 'temperature':
      return temperatureText(value.degreesF, reader.unit);
    case 'clock':
      return clockText(voice.language, value.local, value.repeat);
    case 'list':
      return value.of.flatMap((reply) => renderOne(voice, reply) ?? []).join(JOINTS[value.by]);
  }
}

/** As it was said where that is short (2.375 lb), else to 2 places in pounds and 3 in kilograms. */
function weightText(grams: Grams, unit: KitchenUnit): string {
  const amount = fromGrams(grams, unit);
  const exact = amount.decimalPlaces() <= 3;
  return `${exact ? amount.toString() : roundTo(amount, unit === 'lb' ? 2 : 3).toString()} ${unit}`;
}

function sizeText(grams: Grams, unit: KitchenUnit): string {
  const small = portionUnit(unit);
  return `${roundTo(fromGrams(grams, small), small === 'oz' ? 2 : 1).toString()} ${small}`;
}

const signs = new Map<string, string>();

/** The currency's sign, or its code where the language has none for it. */
function signOf(language: string, currency: string): string {
  const known = signs.get(currency);
  if (known !== undefined) return known;
  const parts = new Intl.NumberFormat(language, {
    style: 'currency',
    currency,
    currencyDisplay: 'narrowSymbol',
  }).formatToParts(0);
  const sign = parts.find(({ type }) => type === 'currency')?.value ?? currency;
  const spaced = /[A-Z]$/.test(sign) ? `${sign} ` : sign;
  signs.set(currency, spaced);
  return spaced;
}

/** The places to which an amount is read back that was said with a fraction of a cent (a bag at 12.5 cents). */
const MOST_PLACES = 4;

/** To the cent. */
function moneyText({ language, reader }: Voice, amount: Decimal, exact?: true): string {
  const places = amount.decimalPlaces();
  const shown = exact === true && places <= MOST_PLACES ? Math.max(2, places) : 2;
  return `${amount.isNegative() ? '-' : ''}${signOf(language, reader.currency)}${roundTo(amount.abs(), shown).toFixed(shown)}`;
}

/** In the kitchen's degrees, as it was said where that is short. */
function temperatureText(degreesF: Decimal, unit: KitchenUnit): string {
  const scale = degreeUnit(unit);
  return `${roundTo(scale === 'F' ? degreesF : toC(degreesF), 1).toString()} °${scale}`;
}

const DAY = { month: 'short', day: 'numeric' } as const;
const formats = new Map<string, Intl.DateTimeFormat>();

function dateText(
  { language, reader: { timezone } }: Voice,
  at: string,
  options: Intl.DateTimeFormatOptions = DAY,
): string {
  const key = `${language} ${timezone} ${options === DAY ? 'day' : 'time'}`;
  const known = formats.get(key);
  const format = known ?? new Intl.DateTimeFormat(language, { ...options, timeZone: timezone });
  if (known === undefined) formats.set(key, format);
  return format.format(new Date(at));
}

const HOUR = { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' } as const;

const momentText = (voice: Voice, at: string): string =>
  `${dateText(voice, at)} ${dateText(voice, at, HOUR)}`;

const CLOCK = { hour: 'numeric', minute: '2-digit', timeZone: 'UTC' } as const;
const CLOCKS = {
  once: { weekday: 'short', month: 'short', day: 'numeric', ...CLOCK },
  weekly: { weekday: 'long', ...CLOCK },
  daily: CLOCK,
} as const;

/** A local time is what the wall shows: no zone is applied to it. */
const clockText = (language: string, local: string, repeat: 'daily' | 'weekly' | 'once' = 'once'): string =>
  new Intl.DateTimeFormat(language, CLOCKS[repeat]).format(new Date(`${local}:00Z`)).replace(/\u202f/g, ' ');

// Data of the core as JSON text and back, for whatever keeps it. A Decimal is written as {"$d":"1.1"}, never as a
// JSON number, which is a float to every reader. A name that begins with "$" gets a second one, so that no
// name of a cook's can look like that mark.
import { decimal, type Decimal, isDecimal } from './decimal.ts';

const MARK = '$d';

/** Plain objects, lists, strings, numbers, booleans, null and Decimals as JSON. Throws on anything else: it would not come back. */
export const toPlainJson = (value: unknown): string => JSON.stringify(marked(value));

/** What `toPlainJson` wrote. The shape is the caller's word: it is not checked. */
export const fromPlainJson = (text: string): unknown => unmarked(JSON.parse(text));

function marked(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return markedScalar(value);
  if (isDecimal(value)) return { [MARK]: figureOf(value) };
  if (Array.isArray(value)) return value.map(marked);
  if (!isPlain(value)) throw new Error('not plain data: it would not come back from JSON');
  return renamed(value, marked, (name) => (name.startsWith('$') ? `$${name}` : name));
}

function markedScalar(value: unknown): unknown {
  const lost = typeof value === 'bigint' || typeof value === 'function' || typeof value === 'symbol';
  if (lost || (typeof value === 'number' && !Number.isFinite(value)))
    throw new Error(`not plain data: ${String(value)}`);
  return value;
}

function figureOf(value: Decimal): string {
  if (!value.isFinite()) throw new Error('not a finite decimal');
  return value.toFixed();
}

function unmarked(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map(unmarked);
  const figure: unknown = Object.hasOwn(value, MARK) ? (value as Record<string, unknown>)[MARK] : undefined;
  if (typeof figure === 'string') return decimal(figure);
  return renamed(value, unmarked, (name) => (name.startsWith('$') ? name.slice(1) : name));
}

/** `fromEntries` makes own properties, also of a name like `__proto__`; plain assignment would set the prototype. */
const renamed = (value: object, each: (value: unknown) => unknown, name: (name: string) => string): object =>
  Object.fromEntries(Object.entries(value).map(([key, inner]) => [name(key), each(inner)]));

function isPlain(value: object): boolean {
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === null || prototype === Object.prototype;
}

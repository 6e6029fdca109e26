// The parameters of a call. JSON brings typed values, forms bring strings: both are read the same.
import { badRequest } from '../refusal.ts';

export interface Upload {
  readonly fileName: string;
  readonly bytes: Uint8Array;
}

export type Params = Readonly<Record<string, unknown>>;

export const isUpload = (value: unknown): value is Upload =>
  typeof value === 'object' && value !== null && 'bytes' in value && value.bytes instanceof Uint8Array;

export const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

export function text(params: Params, name: string): string | undefined {
  const value = params[name];
  if (typeof value === 'number' || typeof value === 'boolean') return String(value);
  if (typeof value !== 'string') return undefined;
  // Half of a pair, as a careless split leaves it.
  if (/\p{Surrogate}/u.test(value)) throw badRequest('strings must be encoded in UTF-8');
  return value;
}

export function integer(params: Params, name: string): number | undefined {
  const value = text(params, name);
  return value !== undefined && /^-?\d{1,15}$/.test(value.trim()) ? Number(value) : undefined;
}

export const flag = (params: Params, name: string): boolean =>
  ['true', '1', 'yes'].includes((text(params, name) ?? '').toLowerCase());

/** A value that a form carries as JSON. */
export function structure(params: Params, name: string): unknown {
  const value = params[name];
  if (typeof value !== 'string') return value ?? undefined;
  if (value === '') return undefined;
  try {
    return JSON.parse(value) as unknown;
  } catch {
    throw badRequest(`can't parse ${name.replaceAll('_', ' ')} JSON object`);
  }
}

export function list(params: Params, name: string): readonly unknown[] | undefined {
  const value = structure(params, name);
  if (value === undefined) return undefined;
  if (!Array.isArray(value)) throw badRequest(`expected an Array of ${name}`);
  return value as readonly unknown[];
}

/** For the log: what was sent, without the bytes. */
export const withoutBytes = (params: Params): Params =>
  Object.fromEntries(
    Object.entries(params).map(([name, value]) => [
      name,
      isUpload(value) ? { file_name: value.fileName, size: value.bytes.length } : value,
    ]),
  );

// What differs between what a row expects and what came out.
import { isSame, valueOf } from './arithmetic.ts';

export interface Compared {
  /** Where only the fields that are named have to be there. */
  readonly partial: boolean;
}

/** The first difference, or undefined. An expected null means that the field is absent; a sum is worked out. */
export function difference(expected: unknown, actual: unknown, how: Compared, at = ''): string | undefined {
  if (expected === null)
    return actual === undefined ? undefined : `${at} is there: ${JSON.stringify(actual)}`;
  if (Array.isArray(expected)) return ofLists(expected, actual, how, at);
  if (typeof expected === 'object') return ofObjects(expected as Named, actual, how, at);
  return isEqual(expected, actual)
    ? undefined
    : `${at} is ${JSON.stringify(actual)}, not ${JSON.stringify(expected)}`;
}

type Named = Readonly<Record<string, unknown>>;

function ofLists(
  expected: readonly unknown[],
  actual: unknown,
  how: Compared,
  at: string,
): string | undefined {
  if (!Array.isArray(actual) || actual.length !== expected.length)
    return `${at} is ${JSON.stringify(actual)}, not ${JSON.stringify(expected)}`;
  return firstOf(
    expected.map((each, index) => () => difference(each, actual[index], how, `${at}[${index}]`)),
  );
}

function ofObjects(expected: Named, actual: unknown, how: Compared, at: string): string | undefined {
  if (typeof actual !== 'object' || actual === null) return `${at} is ${JSON.stringify(actual)}`;
  const found = actual as Named;
  const more = how.partial ? undefined : Object.keys(found).find((key) => !Object.hasOwn(expected, key));
  if (more !== undefined) return `${at}.${more} is not expected`;
  return firstOf(
    Object.entries(expected).map(
      ([key, each]) =>
        () =>
          difference(each, found[key], how, `${at}.${key}`),
    ),
  );
}

/** A figure of the program is a string, a count a number: a row may write either, and sums as text. */
function isEqual(expected: unknown, actual: unknown): boolean {
  if (typeof actual === 'number') return expected === actual;
  if (typeof actual !== 'string' || !/^-?\d+(\.\d+)?$/.test(actual)) return expected === actual;
  return isSame(valueOf(String(expected)), Number(actual));
}

const firstOf = (checks: readonly (() => string | undefined)[]): string | undefined => {
  for (const check of checks) {
    const found = check();
    if (found !== undefined) return found;
  }
  return undefined;
};

// docs/calculations.md is true: each of its examples is run as it stands on the page.
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { expectCase, readYaml } from './worked-case.ts';

const page = readFileSync(new URL('../../docs/calculations.md', import.meta.url), 'utf8');
const example = z.strictObject({ given: z.unknown(), gives: z.record(z.string(), z.unknown()) });

/** The fenced examples, each with the line on which it begins and the heading above it. */
const examples = [...page.matchAll(/^```yaml\n([\s\S]*?)^```$/gm)].map((match) => {
  const before = page.slice(0, match.index);
  const heading = [...before.matchAll(/^## (.*)$/gm)].at(-1)?.[1] ?? '';
  return { heading, line: before.split('\n').length, ...example.parse(readYaml(match[1] ?? '')) };
});

test.each(examples)('$heading, the example on line $line', ({ given, gives }) => {
  expectCase(given, gives);
});

test('every section with a formula has an example that was run', () => {
  const sections = page.split(/^## /m).slice(1);
  const withFormula = sections.filter((section) => /^ {4}\S.* = /m.test(section));
  expect(withFormula.length).toBeGreaterThan(5);
  expect(withFormula.filter((section) => !section.includes('```yaml'))).toEqual([]);
});

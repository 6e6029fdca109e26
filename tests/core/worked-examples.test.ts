// Published cutting tests, each with its source: see worked-examples.yaml.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { breakEven } from '../../src/core/break-even.ts';
import { costsPerLb } from '../../src/core/costs.ts';
import { d, lb, shown } from './given.ts';
import { expectCase, readYaml } from './worked-case.ts';

const figure = z.record(z.string(), z.string());
const examples = z
  .array(
    z.strictObject({
      name: z.string(),
      source: z.string(),
      given: z.unknown(),
      gives: z.record(z.string(), z.union([z.string(), figure])),
      printed: figure.optional(),
      misprinted: figure.optional(),
    }),
  )
  .parse(readYaml(readFileSync(new URL('worked-examples.yaml', import.meta.url), 'utf8')));

test.each(examples)('$name gives the figures recomputed from its inputs ($source)', ({ given, gives }) => {
  expectCase(given, gives);
});

test.each(examples.filter(({ printed }) => printed !== undefined))(
  '$name gives what the source printed, rounded half-up',
  ({ given, printed }) => {
    expectCase(given, printed ?? {});
  },
);

test.each(examples.filter(({ misprinted }) => misprinted !== undefined))(
  '$name does not give what the source misprinted',
  ({ given, misprinted = {} }) => {
    for (const [label, wrong] of Object.entries(misprinted))
      expect(() => {
        expectCase(given, { [label]: wrong });
      }).toThrow(wrong);
  },
);

describe('make or buy with fixed costs (OpenStax, Principles of Accounting, vol. 2): 120,000 units', () => {
  const units = d('120000');
  const sums = {
    receivedGrams: lb('120000'),
    portionGrams: lb('120000'),
    credit: d('0'),
    avoidableLabor: d('0.45').times(units),
    fixedLabor: d('0.51').times(units),
    packing: d('0.36').times(units),
  };
  const purchaseCost = d('0.87').times(units);

  test('the relevant cost is 1.68 a unit, and making saves 8,400', () => {
    const { breakEvenReadyCutPerLb, savingPerLb } = breakEven({
      sums,
      purchaseCost,
      readyCutPerLb: d('1.75'),
    });
    expect(shown(breakEvenReadyCutPerLb)).toBe('1.68');
    expect(shown(savingPerLb?.times(units))).toBe('8400');
  });

  test('counting the fixed cost too would turn the answer, so it must stay out of the comparison', () => {
    expect(shown(costsPerLb(sums, purchaseCost).loadedCostPerLb)).toBe('2.19');
    expect(shown(costsPerLb(sums, purchaseCost).comparedCostPerLb)).toBe('1.68');
  });
});

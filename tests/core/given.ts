// Given what was said at the table: the facts of a test, written as briefly as a cook says them.
import { decimal, type Decimal } from '../../src/core/decimal.ts';
import type { Fact, FactOf, Recorded } from '../../src/core/facts.ts';
import { type CostSettings, type Figures, figures } from '../../src/core/figures.ts';
import { type Grams, toGrams } from '../../src/core/quantity.ts';
import { foldTest, type Test } from '../../src/core/test.ts';

export const d = decimal;
export const lb = (amount: string): Grams => toGrams(decimal(amount), 'lb');
export const oz = (amount: string): Grams => toGrams(decimal(amount), 'oz');
export const kg = (amount: string): Grams => toGrams(decimal(amount), 'kg');

/** A weight as it is written in the data files: "2 lb 8 oz", "750 g". */
export function weight(text: string): Grams {
  const words = text.trim().split(/\s+/);
  let grams = decimal('0');
  for (let at = 0; at < words.length; at += 2) {
    const unit = words[at + 1];
    if (unit !== 'lb' && unit !== 'oz' && unit !== 'kg' && unit !== 'g')
      throw new Error(`no weight: ${text}`);
    grams = grams.plus(toGrams(decimal(words[at] ?? ''), unit));
  }
  return grams;
}

export const received = (pounds: string, perLb?: string, item = 'ribeye'): FactOf<'received'> => ({
  type: 'received',
  item,
  grams: lb(pounds),
  perLb: perLb === undefined ? undefined : d(perLb),
});
export const weighed = (part: string, pounds: string, creditPerLb?: string): FactOf<'weighed'> => ({
  type: 'weighed',
  part,
  grams: lb(pounds),
  mode: 'set',
  creditPerLb: creditPerLb === undefined ? undefined : d(creditPerLb),
});
export const another = (part: string, pounds: string): FactOf<'weighed'> => ({
  ...weighed(part, pounds),
  mode: 'add',
});
export const portioned = (said: Omit<FactOf<'portioned'>, 'type' | 'mode'>): FactOf<'portioned'> => ({
  type: 'portioned',
  mode: 'set',
  ...said,
});
export const morePortions = (said: Omit<FactOf<'portioned'>, 'type' | 'mode'>): FactOf<'portioned'> => ({
  ...portioned(said),
  mode: 'add',
});
export const listed = (...ounces: readonly string[]): FactOf<'listed'> => ({
  type: 'listed',
  eachGrams: ounces.map(oz),
});
export const closed = (flagged = false): Fact => ({ type: 'closed', flagged });
export const undone = (target: string): FactOf<'undone'> => ({ type: 'undone', target, bare: true });
export const corrected = (target: string, by: FactOf<'corrected'>['by']): Fact => ({
  type: 'corrected',
  target,
  by,
});

/** The facts as the log has them: the first is entry e1, the second e2 and so on, all in test 1. */
export const logOf = (facts: readonly Fact[]): readonly Recorded[] =>
  facts.map((fact, index) => ({
    entry: `e${index + 1}`,
    speaker: 'cutter',
    at: `2026-03-06T09:${String(index).padStart(2, '0')}:00Z`,
    test: 1,
    item: 'ribeye',
    fact,
  }));

export const testOf = (...facts: readonly Fact[]): Test => foldTest(logOf(facts));

export const AVOIDABLE: CostSettings = { laborAvoidable: true };
export const PAID_ANYWAY: CostSettings = { laborAvoidable: false };

export const figuresOf = (...facts: readonly Fact[]): Figures => figures(testOf(...facts), AVOIDABLE);

/** A decimal as text, half-up to some places, with nothing for no value: what a test compares. */
export const shown = (value: Decimal | undefined, places = 6): string | undefined =>
  value?.toDecimalPlaces(places, 4).toString();

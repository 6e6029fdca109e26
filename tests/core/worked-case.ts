// A worked example as data: what was weighed and paid, and the figures that must come of it. Both the published
// examples and those of docs/calculations.md are written like this and run by this file.
import { expect } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import { decimal, type Decimal, isDecimal, roundTo } from '../../src/core/decimal.ts';
import type { Fact } from '../../src/core/facts.ts';
import { type CostSettings, figures } from '../../src/core/figures.ts';
import { perLbOf } from '../../src/core/money.ts';
import { contribution, EMPTY_POOL, type Pool, withTest } from '../../src/core/pool.ts';
import { itemVerdict, testVerdict } from '../../src/core/verdict.ts';
import { testOf, weight } from './given.ts';
import { priceOf, type Solved, valueOf } from './worked-figures.ts';

const pieceShape = {
  received: z.string(),
  price: z.string().optional(),
  'paid in all': z.string().optional(),
  parts: z.record(z.string(), z.string()).default({}),
  portions: z
    .strictObject({
      count: z.string().optional(),
      each: z.string().optional(),
      weigh: z.string().optional(),
      list: z.array(z.string()).optional(),
    })
    .optional(),
  labor: z
    .strictObject({
      minutes: z.string(),
      'rate per hour': z.string().optional(),
      'paid anyway': z.string().optional(),
    })
    .optional(),
  'packing each': z.string().optional(),
  cooked: z.string().optional(),
  served: z.string().optional(),
  sold: z.array(z.string()).default([]),
  tolerance: z.string().optional(),
};
const shape = z.strictObject({
  ...pieceShape,
  received: z.string().optional(),
  'closed tests': z.array(z.strictObject(pieceShape)).default([]),
  'ready-cut': z.string().optional(),
  order: z.strictObject({ count: z.string(), each: z.string() }).optional(),
  'food cost %': z.string().optional(),
  'new price': z.string().optional(),
  'menu price': z.string().optional(),
  'end piece': z.string().optional(),
});
type Piece = z.infer<z.ZodObject<typeof pieceShape>>;

/** Every scalar stays the text that was written: "6.790" is no float. */
export const readYaml = (text: string): unknown => parse(text, { schema: 'failsafe' });

/** Runs `given` and holds each figure of `gives` against what comes out, to the places in which it is written. */
export function expectCase(given: unknown, gives: Readonly<Record<string, unknown>>): void {
  const found = solve(shape.parse(given));
  for (const [label, expected] of Object.entries(gives)) expectFigure(label, expected, valueOf(found, label));
}

/** One figure of a case, by the label that the data files use. */
export const figureOf = (given: unknown, label: string): unknown => valueOf(solve(shape.parse(given)), label);

function expectFigure(label: string, expected: unknown, actual: unknown): void {
  if (typeof expected === 'string')
    expect(`${label}: ${written(actual, expected)}`).toBe(`${label}: ${expected}`);
  else if (Array.isArray(expected)) expect({ [label]: actual }).toEqual({ [label]: expected });
  else
    for (const [name, value] of Object.entries(expected as Record<string, unknown>))
      expectFigure(`${label} ${name}`, value, (actual as Record<string, unknown>)[name]);
}

/** The figure half-up to the places in which the expected one is written; a word or a count as it is. */
function written(actual: unknown, like: string): string {
  if (actual === undefined) return 'none';
  if (typeof actual === 'string' || typeof actual === 'number') return `${actual}`;
  if (!isDecimal(actual)) throw new Error(`no figure: ${JSON.stringify(actual)}`);
  const places = like.split('.')[1]?.length ?? 0;
  return roundTo(actual, places).toFixed(places);
}

function solve(given: z.infer<typeof shape>): Solved {
  const pool = given['closed tests'].reduce(
    (sums, piece) => withTest(sums, contributionOf(piece)),
    EMPTY_POOL,
  );
  const readyCutPerLb = given['ready-cut'] === undefined ? undefined : priceOf(given['ready-cut']);
  if (given.received === undefined) {
    const pricePerLb = given.price === undefined ? undefined : priceOf(given.price);
    return { given, pool, verdict: itemVerdict({ pool, pricePerLb, readyCutPerLb }) };
  }
  const piece: Piece = { ...given, received: given.received };
  const folded = testOf(...factsOf(piece));
  const found = figures(folded, settingsOf(piece));
  return { given, pool, folded, test: found, verdict: testVerdict({ figures: found, readyCutPerLb, pool }) };
}

const settingsOf = (piece: Piece): CostSettings => ({
  laborAvoidable: piece.labor?.['paid anyway'] !== 'yes',
});

function contributionOf(piece: Piece): Pool {
  const found = contribution(
    testOf(...factsOf(piece), { type: 'closed', flagged: false }),
    settingsOf(piece),
  );
  if (found === undefined) throw new Error('a closed test of the example is not pooled');
  return found;
}

function factsOf(piece: Piece): readonly Fact[] {
  const { portions, labor } = piece;
  const facts: Fact[] = [
    {
      type: 'received',
      item: 'ribeye',
      grams: weight(piece.received),
      perLb: piece.price === undefined ? undefined : priceOf(piece.price),
      cost: piece['paid in all'] === undefined ? undefined : decimal(piece['paid in all']),
    },
    ...Object.entries(piece.parts).map(([part, text]) => partFact(part, text)),
  ];
  if (portions) facts.push(...portionFacts(portions));
  for (const part of piece.sold) facts.push({ type: 'sold', part });
  if (piece.cooked !== undefined) facts.push({ type: 'cooked', grams: weight(piece.cooked) });
  if (piece.served !== undefined) facts.push({ type: 'served', grams: weight(piece.served) });
  if (labor)
    facts.push({
      type: 'labored',
      minutes: decimal(labor.minutes),
      ratePerHour: optional(labor['rate per hour']),
    });
  if (piece['packing each'] !== undefined)
    facts.push({ type: 'packed', costEach: decimal(piece['packing each']) });
  return facts;
}

const optional = (figure: string | undefined): Decimal | undefined =>
  figure === undefined ? undefined : decimal(figure);

/** "1.5 lb", "1.5 lb at 2.00/lb" or "12 oz worth 1.87". */
function partFact(part: string, text: string): Fact {
  const [amount = '', kind, price = ''] = text.split(/ (at|worth) /);
  const grams = weight(amount);
  const creditPerLb =
    kind === 'at' ? priceOf(price) : kind === 'worth' ? perLbOf(decimal(price), grams) : undefined;
  return { type: 'weighed', part, grams, mode: 'set', creditPerLb };
}

function portionFacts({ count, each, weigh, list }: NonNullable<Piece['portions']>): readonly Fact[] {
  const said: Fact = {
    type: 'portioned',
    mode: 'set',
    count: count === undefined ? undefined : Number(count),
    eachGrams: each === undefined ? undefined : weight(each),
    grams: weigh === undefined ? undefined : weight(weigh),
  };
  return list === undefined ? [said] : [said, { type: 'listed', eachGrams: list.map(weight) }];
}

// The catalogue of what a kitchen cuts: names, usual weights and limits, the same in every language.
import { z } from 'zod';
import { decimal, type Decimal } from '../core/decimal.ts';
import { toGrams } from '../core/quantity.ts';
import type { Bands } from '../core/slip.ts';
import type { Limits } from './slot.ts';

const figure = z.string().transform((text) => decimal(text));

export const catalogueSchema = z.strictObject({
  limits: z.strictObject({
    maxReceivedLb: figure,
    minWeightLb: figure,
    maxPortionOz: figure,
    minPortionOz: figure,
    maxPricePerLb: z.record(z.string(), figure),
    maxPieces: z.number().int(),
    maxCount: z.number().int(),
    maxMinutes: z.number().int(),
  }),
  items: z.array(
    z.strictObject({
      name: z.string(),
      usual: z.array(z.strictObject({ as: z.enum(['piece', 'bag', 'side', 'case']), lb: figure })).min(1),
      source: z.string(),
    }),
  ),
  parts: z.array(
    z.strictObject({
      name: z.string(),
      role: z.enum(['waste', 'byproduct', 'either']),
      note: z.string().optional(),
      usualPct: z.strictObject({ low: figure, high: figure, source: z.string() }).optional(),
    }),
  ),
  containers: z.array(z.string()),
});
export type Catalogue = z.output<typeof catalogueSchema>;

/** What the parts usually come to, of those for which that is known. */
export const bandsOf = ({ parts }: Catalogue): Bands =>
  new Map(
    parts.flatMap(({ name, usualPct: band }) =>
      band === undefined ? [] : [[name, { lowPct: band.low, highPct: band.high }]],
    ),
  );

/** The limits in the units of the core, for a kitchen of this currency (ISO 4217). */
export function limitsOf({ limits }: Catalogue, currency: string): Limits {
  const known = Object.hasOwn(limits.maxPricePerLb, currency)
    ? limits.maxPricePerLb[currency]
    : limits.maxPricePerLb['other'];
  const maxPricePerLb: Decimal = known ?? decimal('10000000');
  return {
    minWeightGrams: toGrams(limits.minWeightLb, 'lb'),
    maxReceivedGrams: toGrams(limits.maxReceivedLb, 'lb'),
    maxPortionGrams: toGrams(limits.maxPortionOz, 'oz'),
    minPortionGrams: toGrams(limits.minPortionOz, 'oz'),
    maxPricePerLb,
    maxSum: maxPricePerLb.times(limits.maxReceivedLb),
    maxPieces: limits.maxPieces,
    maxCount: limits.maxCount,
    maxMinutes: limits.maxMinutes,
  };
}

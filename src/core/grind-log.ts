// The record of grinding as rows for a file: the fields of 9 CFR 320.1(b)(4) and, beside them, how it was cooked.
// Official establishments and retail stores must keep it for a year (320.3(c)); for others the local code tells.
import { figure } from './entry-json.ts';
import type { Lot } from './lots.ts';
import { fromGrams } from './quantity.ts';

/** The columns in their order. Instants are UTC, ISO 8601; several values of a field are joined with "; "; what was not said is empty. */
export const GRIND_LOG_FIELDS = [
  'lot', 'groundAt', 'groundBy', 'material', 'weightLb', 'from', 'suppliers', 'supplierLots', 'establishments', 'productionDates',
  'carriedOver', 'cleanedBefore', 'cleanedAfter', 'readingsF', 'batchesPassed', 'batches', 'closedAt', 'closedAs',
] as const; // prettier-ignore
export type GrindLogRow = Readonly<Record<(typeof GRIND_LOG_FIELDS)[number], string>>;

export const grindLogRows = (lots: readonly Lot[]): readonly GrindLogRow[] =>
  lots.filter(({ status }) => status !== 'dropped').map(rowOf);

const joined = (values: readonly (string | undefined)[]): string =>
  [...new Set(values.filter((value) => value !== undefined && value !== ''))].join('; ');

export function rowOf(lot: Lot): GrindLogRow {
  const { from, sources, carriedOver, batches } = lot;
  const readings = batches.flatMap((batch) => batch.readings);
  return {
    lot: String(lot.id),
    groundAt: lot.openedAt,
    groundBy: lot.openedBy,
    material: lot.part,
    weightLb: lot.grams === undefined ? '' : figure(fromGrams(lot.grams, 'lb')),
    from: joined(from.map(({ test, item }) => `${item} #${test}`)),
    suppliers: joined([...from, ...sources].map(({ supplier }) => supplier)),
    supplierLots: joined(sources.map(({ supplierLot }) => supplierLot)),
    establishments: joined(sources.map(({ establishment }) => establishment)),
    productionDates: joined(sources.map(({ produced }) => produced)),
    carriedOver: carriedOver === undefined ? '' : carriedText(carriedOver),
    cleanedBefore: lot.cleanedBefore ?? '',
    cleanedAfter: joined(lot.cleanedAfter),
    readingsF: joined(
      readings.map(({ at, degreesF, passed }) => `${at} ${figure(degreesF)} ${passed ? 'pass' : 'fail'}`),
    ),
    batchesPassed: String(batches.filter(({ passed }) => passed).length),
    batches: String(batches.length),
    closedAt: lot.closedAt ?? '',
    closedAs: lot.how ?? '',
  };
}

const carriedText = ({ none, grams }: NonNullable<Lot['carriedOver']>): string =>
  none ? 'none' : grams === undefined ? 'yes' : `${figure(fromGrams(grams, 'lb'))} lb`;

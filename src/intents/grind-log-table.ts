// The record of grinding as a table, a row a lot: the fields of 9 CFR 320.1(b)(4) and, beside them, how it was cooked and with
// which thermometer. Official establishments and retail stores must keep it for a year (320.3(c)); for others the local code tells.
import { localOf } from '../core/local-time.ts';
import type { Lot, Reading } from '../core/lots.ts';
import { type Column, fileName, type SheetFormat, type TablePaper, type Value } from '../core/paper.ts';
import { list, name, type Reply, say, temperature, weight } from '../core/reply.ts';
import type { Settings } from '../core/settings.ts';
import { isOff } from '../core/thermometer-checks.ts';
import { carriedWords } from './safety-words.ts';

/** The columns in their order. What was not said is empty; several values of a field are parted by semicolons. */
export const GRIND_LOG_FIELDS = [
  'lot', 'groundAt', 'groundBy', 'material', 'weight', 'from', 'fromWeight', 'suppliers', 'supplierLots', 'establishments', 'productionDates',
  'carriedOver', 'cleanedBefore', 'cleanedAfter', 'readings', 'batchesPassed', 'batches', 'thermometer', 'closedAt', 'closedAs',
] as const; // prettier-ignore
type Field = (typeof GRIND_LOG_FIELDS)[number];

/** The most lots in a file: those of a year and more, where one is ground each day. */
export const MOST_LOTS = 500;

interface Wanted {
  readonly settings: Pick<Settings, 'unit' | 'timezone'>;
  readonly format: SheetFormat;
  /** What somebody is called. */
  readonly called: (speaker: string) => Value;
}

/** The newest lot first. */
export function grindLogTable(
  lots: readonly Lot[],
  { settings: { unit, timezone }, format, called }: Wanted,
): TablePaper {
  const columns = GRIND_LOG_FIELDS.map((field): Column => ({
    label: say(`log-column-${field}`, { unit, timezone: name(timezone) }),
  }));
  const rows = lots.slice(0, MOST_LOTS).map((lot) => {
    const cells = cellsOf(lot, {
      local: (instant) => localOf(Date.parse(instant), timezone).replace('T', ' '),
      called,
    });
    return GRIND_LOG_FIELDS.map((field) => cells[field]);
  });
  return { is: 'table', name: fileName('grind-log'), format, columns, rows };
}

interface By {
  readonly local: (instant: string) => string;
  readonly called: Wanted['called'];
}

function cellsOf(lot: Lot, { local, called }: By): Readonly<Record<Field, Value>> {
  const { from, sources, carriedOver, cleanedBefore, cleanedBeforeTold, batches, grams, closedAt, how } = lot;
  return {
    lot: lot.id,
    groundAt: local(lot.openedAt),
    groundBy: called(lot.openedBy),
    material: name(lot.part),
    weight: grams === undefined ? undefined : weight(grams),
    from: joined(from.map(({ test, item }) => `${item} #${test}`)),
    fromWeight: fromGrams(from),
    suppliers: joined([...from, ...sources].map(({ supplier }) => supplier)),
    supplierLots: joined(sources.map(({ supplierLot }) => supplierLot)),
    establishments: joined(sources.map(({ establishment }) => establishment)),
    productionDates: joined(sources.map(({ produced }) => produced)),
    carriedOver: carriedOver && carriedWords(carriedOver),
    cleanedBefore: words([
      ...(cleanedBefore === undefined ? [] : [say('line', { of: name(local(cleanedBefore)) })]),
      ...(cleanedBeforeTold === undefined ? [] : [say('log-cell-told', { at: local(cleanedBeforeTold) })]),
    ]),
    cleanedAfter: joined(lot.cleanedAfter.map(local)),
    readings: words(
      batches.flatMap(({ readings }, index) => readings.map((each) => readingCell(each, index + 1, local))),
    ),
    batchesPassed: batches.filter(({ passed }) => passed).length,
    batches: batches.length,
    thermometer: words(
      lot.checks.map(({ at, point, degreesF }) =>
        say('log-cell-check', {
          at: local(at),
          point,
          degrees: temperature(degreesF),
          isOff: isOff({ point, degreesF }) ? 'yes' : 'no',
        }),
      ),
    ),
    closedAt: closedAt && local(closedAt),
    closedAs: how && say(`lot-${how}`),
  };
}

/** What the tests say of the weight; nothing where one of them does not say it. */
function fromGrams(from: Lot['from']): Value {
  const known = from.flatMap(({ grams }) => grams ?? []);
  return known.length === 0 || known.length < from.length
    ? undefined
    : weight(known.reduce((sum, each) => sum.plus(each)));
}

function joined(values: readonly (string | undefined)[]): Value {
  const all = [...new Set(values.filter((value) => value !== undefined && value !== ''))];
  return all.length === 0 ? undefined : name(all.join('; '));
}

const words = (of: readonly Reply[]): Value =>
  of.length === 0 ? undefined : say('line', { of: list(of, 'semicolon') });

const readingCell = ({ at, degreesF, passed }: Reading, batch: number, local: By['local']): Reply =>
  say('log-cell-reading', {
    at: local(at),
    batch,
    degrees: temperature(degreesF),
    passed: passed ? 'yes' : 'no',
  });

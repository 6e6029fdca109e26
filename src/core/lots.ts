// A lot of ground meat as its facts tell it. It is open until somebody says that it is used up or thrown away.
import type { Decimal } from './decimal.ts';
import type { FactOf, LotId, Recorded } from './facts.ts';
import type { Grams } from './quantity.ts';
import { type Standing, standingFacts } from './standing-facts.ts';

export interface Reading {
  readonly entry: string;
  readonly at: string;
  readonly speaker: string;
  readonly what?: string;
  readonly degreesF: Decimal;
  readonly limitF?: Decimal;
  readonly passed: boolean;
}

/** What is cooked of a lot at once: from its first word or reading to its passing one. */
export interface Batch {
  /** The entry that it began with. */
  readonly begun: string;
  readonly at: string;
  readonly readings: readonly Reading[];
  readonly passed: boolean;
  /** When it was thrown away, where it was. */
  readonly thrownAt?: string;
}

/** A check of the thermometer while the lot was open. */
export interface Check {
  readonly at: string;
  readonly point: FactOf<'thermometerChecked'>['point'];
  readonly degreesF: Decimal;
}

export type Source = Omit<FactOf<'sourced'>, 'type'>;

export interface Lot {
  readonly id: LotId;
  readonly status: 'open' | 'closed' | 'dropped';
  readonly entry: string;
  readonly openedAt: string;
  readonly openedBy: string;
  readonly part: string;
  readonly grams?: Grams;
  readonly from: FactOf<'ground'>['from'];
  readonly sources: readonly Source[];
  readonly carriedOver?: Omit<FactOf<'carriedOver'>, 'type'>;
  readonly cleanedBefore?: string;
  /** When somebody told afterwards that it had been cleaned before. */
  readonly cleanedBeforeTold?: string;
  readonly cleanedAfter: readonly string[];
  readonly batches: readonly Batch[];
  readonly raw: readonly Reading[];
  readonly checks: readonly Check[];
  readonly closedAt?: string;
  readonly how?: 'used' | 'thrown';
  readonly facts: readonly Recorded[];
}

interface Lots {
  readonly lots: ReadonlyMap<LotId, Lot>;
  readonly nextLot: LotId;
}

/** How many lots that are not open stay in memory. */
const CLOSED_KEPT = 12;

/** The lots after one more fact. A fact of a lot that is not at hand changes none. */
export function evolveLots({ lots, nextLot }: Lots, recorded: Recorded): Lots {
  const id = recorded.lot;
  if (id === undefined || (!lots.has(id) && recorded.fact.type !== 'ground')) return { lots, nextLot };
  const after = new Map(lots).set(id, foldLot([...(lots.get(id)?.facts ?? []), recorded]));
  const done = [...after.values()].filter((lot) => lot.status !== 'open' && lot.id !== id);
  for (const lot of done.slice(0, Math.max(0, done.length - CLOSED_KEPT))) after.delete(lot.id);
  return { lots: after, nextLot: Math.max(nextLot, id + 1) };
}

/** The lot that its facts tell. Throws where it does not begin with what was ground: a bug, or a damaged log. */
export function foldLot(facts: readonly Recorded[]): Lot {
  const first = facts[0];
  if (first?.fact.type !== 'ground' || first.lot === undefined)
    throw new Error('a lot does not begin with what was ground');
  const standing = standingFacts(facts);
  const lot = standing.reduce(apply, opened(first, first.lot, first.fact));
  const stands = standing.some(({ fact }) => fact.type === 'ground');
  return { ...lot, status: stands ? lot.status : 'dropped', facts };
}

const opened = ({ entry, at, speaker }: Recorded, id: LotId, fact: FactOf<'ground'>): Lot => ({
  ...{ id, status: 'open', entry, openedAt: at, openedBy: speaker },
  ...{ part: fact.part, grams: fact.grams, from: fact.from, cleanedBefore: fact.cleanedAt },
  ...{ sources: [], cleanedAfter: [], batches: [], raw: [], checks: [], facts: [] },
});

function apply(lot: Lot, { recorded, fact }: Standing): Lot {
  const { type: _, ...said } = fact;
  switch (fact.type) {
    case 'ground':
      return { ...lot, part: fact.part, grams: fact.grams, from: fact.from };
    case 'sourced':
      return { ...lot, sources: [...lot.sources, said as Source] };
    case 'carriedOver':
      return { ...lot, carriedOver: { none: fact.none, grams: fact.grams } };
    case 'cleaned':
      if (fact.before === true) return { ...lot, cleanedBeforeTold: recorded.at };
      return { ...lot, cleanedAfter: [...lot.cleanedAfter, recorded.at] };
    case 'batchBegun':
      return { ...lot, batches: [...lot.batches, begin(recorded)] };
    case 'temperatureRead':
      return read(lot, recorded, fact);
    case 'batchEnded':
      return { ...lot, batches: throwLast(lot.batches, recorded.at) };
    case 'thermometerChecked':
      return {
        ...lot,
        checks: [...lot.checks, { at: recorded.at, point: fact.point, degreesF: fact.degreesF }],
      };
    case 'lotEnded':
      return { ...lot, status: 'closed', closedAt: recorded.at, how: fact.how };
    case 'received':
    case 'weighed':
    case 'portioned':
    case 'listed':
    case 'priced':
    case 'readyCutPriced':
    case 'credited':
    case 'labored':
    case 'packed':
    case 'tared':
    case 'removed':
    case 'noted':
    case 'turned':
    case 'chosen':
    case 'voiceChosen':
    case 'closed':
    case 'dropped':
    case 'undone':
    case 'binned':
    case 'coolingBegun':
    case 'reminderSet':
    case 'reminderCancelled':
    case 'fired':
    case 'acknowledged':
    case 'sold':
    case 'ended':
    case 'cooked':
    case 'served':
      return lot; // prettier-ignore
  }
}

const begin = ({ entry, at }: Recorded): Batch => ({ begun: entry, at, readings: [], passed: false });

function throwLast(batches: readonly Batch[], at: string): readonly Batch[] {
  const last = batches.at(-1);
  return last === undefined ? batches : [...batches.slice(0, -1), { ...last, thrownAt: at }];
}

/** Assumption: nothing is on the heat for longer without a reading; a later one is of another batch. */
const BATCH_LASTS_MS = 4 * 60 * 60 * 1000;

/** When a batch is over of which nothing more is said: milliseconds of UTC. */
export const batchOver = ({ at, readings }: Batch): number =>
  Date.parse(readings.at(-1)?.at ?? at) + BATCH_LASTS_MS;

function read(lot: Lot, recorded: Recorded, fact: FactOf<'temperatureRead'>): Lot {
  const { entry, at, speaker } = recorded;
  const { what, degreesF, limitF, passed } = fact;
  const reading: Reading = { entry, at, speaker, what, degreesF, limitF, passed };
  if (fact.stage === 'raw') return { ...lot, raw: [...lot.raw, reading] };
  const number = fact.batch ?? batchAt(lot, at);
  const batch = lot.batches[number - 1] ?? begin(recorded);
  const after = { ...batch, readings: [...batch.readings, reading], passed };
  return { ...lot, batches: [...lot.batches.slice(0, number - 1), after, ...lot.batches.slice(number)] };
}

/** The batch that a reading is of where nobody says which: the one on the heat, or the next, which begins with it. */
export function batchAt({ batches }: Pick<Lot, 'batches'>, at: string): number {
  const last = batches.at(-1);
  const goesOn = last !== undefined && isCooking(last) && Date.parse(at) < batchOver(last);
  return goesOn ? batches.length : batches.length + 1;
}

/** A batch that has neither passed nor been thrown away. */
export const isCooking = ({ passed, thrownAt }: Batch): boolean => !passed && thrownAt === undefined;

/** Whether what is eaten of a lot lacks a passing temperature: of a batch, or of all of it. */
export const lacksPass = ({ batches }: Pick<Lot, 'batches'>): boolean => {
  const eaten = batches.filter(({ thrownAt }) => thrownAt === undefined);
  return eaten.length === 0 || eaten.some(({ passed }) => !passed);
};

/** Open lots in the order of grinding. */
export const openLots = (lots: ReadonlyMap<LotId, Lot>): readonly Lot[] =>
  [...lots.values()].filter(({ status }) => status === 'open').sort((a, b) => a.id - b.id);

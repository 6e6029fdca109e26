// One cutting test as its facts tell it: what was received, weighed, portioned. No figures here (see figures.ts).
import { type Decimal, ZERO } from './decimal.ts';
import type { Fact, FactOf, Recorded, TestId } from './facts.ts';
import { type Label, withLabel } from './label.ts';
import { type Part, weigh } from './part.ts';
import { portion, type Portions } from './portioning.ts';
import type { Grams } from './quantity.ts';
import { standingFacts } from './standing-facts.ts';

export type { Part } from './part.ts';
export { type Batch, countOf, type Portions } from './portioning.ts';
export { standingFacts, undoneEntries } from './standing-facts.ts';

export interface Received {
  readonly grams: Grams;
  readonly perLb?: Decimal;
  readonly cost?: Decimal;
  readonly pieces?: number;
  readonly supplier?: string;
}

export interface Labor {
  readonly minutes?: Decimal;
  readonly ratePerHour?: Decimal;
}

export interface Test {
  readonly id: TestId;
  readonly item: string;
  readonly status: 'open' | 'closed' | 'dropped';
  readonly openedAt: string;
  readonly openedBy: string;
  readonly closedAt?: string;
  /** Closed although more was weighed than received: never pooled. */
  readonly closedFlagged: boolean;
  readonly received: Received;
  /** In the order in which they were first weighed. */
  readonly parts: readonly Part[];
  /** Credits said in this test for parts, weighed or not yet. */
  readonly credits: Readonly<Record<string, Decimal>>;
  readonly portions: Portions;
  readonly labor: Labor;
  readonly packingEach?: Decimal;
  /** Parts that are products for sale, each once. */
  readonly products: readonly string[];
  /** Of the portions out of the oven, and of what is served of them. */
  readonly cookedGrams?: Grams;
  readonly servedGrams?: Grams;
  readonly notes: readonly string[];
  /** What the labels of the piece say: a grind of its trim takes them over. */
  readonly labels: readonly Label[];
  /** What of the parts was thrown away since. The figures of the test are as they were. */
  readonly binned: readonly Part[];
  /** All facts of the test, the undone ones too, in the order of the log. */
  readonly facts: readonly Recorded[];
}

/** The test after one more fact. Throws where a test does not begin with `received`: a bug, or a damaged log. */
export function evolveTest(test: Test | undefined, recorded: Recorded): Test {
  const facts = [...(test?.facts ?? []), recorded];
  const standsAlone = recorded.fact.type !== 'undone' && recorded.fact.type !== 'corrected';
  if (test !== undefined && test.status !== 'dropped' && standsAlone && recorded.fact.type !== 'received')
    return { ...apply(test, recorded, recorded.fact), facts };
  return foldTest(facts);
}

/** The test that its facts tell. What was undone is left out; what was corrected holds in the place of the original. */
export function foldTest(facts: readonly Recorded[]): Test {
  const first = facts[0];
  const opening = first === undefined ? undefined : openingOf(facts);
  if (first === undefined || first.test === undefined || opening === undefined)
    throw new Error('a cutting test does not begin with what was received');
  let test = open(first, opening);
  const standing = standingFacts(facts);
  for (const { recorded, fact } of standing) test = apply(test, recorded, fact);
  const opened = standing.some(({ fact }) => fact.type === 'received');
  return { ...(opened ? test : { ...test, status: 'dropped' as const }), facts };
}

function openingOf(facts: readonly Recorded[]): FactOf<'received'> | undefined {
  const fact = facts[0]?.fact;
  return fact?.type === 'received' ? fact : undefined;
}

const NO_PORTIONS: Portions = { batches: [], list: [] };

function open(recorded: Recorded, fact: FactOf<'received'>): Test {
  return {
    id: recorded.test ?? 0,
    item: fact.item,
    status: 'open',
    openedAt: recorded.at,
    openedBy: recorded.speaker,
    closedFlagged: false,
    received: { grams: fact.grams },
    parts: [],
    credits: {},
    portions: NO_PORTIONS,
    ...{ labor: {}, products: [], notes: [], labels: [], binned: [] },
    facts: [],
  };
}

/** What one fact changes. Facts of the price book change nothing in a test, except that its first price becomes its own. */
function apply(test: Test, recorded: Recorded, fact: Fact): Test {
  switch (fact.type) {
    case 'received': {
      const { type: _, item, ...received } = fact;
      return { ...test, item, received };
    }
    case 'weighed':
      return {
        ...test,
        parts: weigh(test.parts, fact),
        credits: creditsWith(test, fact.part, fact.creditPerLb),
      };
    case 'portioned':
      return { ...test, portions: portion(test.portions, fact) };
    case 'listed':
      return { ...test, portions: { ...test.portions, list: [...test.portions.list, ...fact.eachGrams] } };
    case 'priced':
      return { ...test, received: priceOnce(test.received, fact.perLb) };
    case 'credited':
      return { ...test, credits: creditsWith(test, fact.part, fact.perLb) };
    case 'labored': {
      const { type: _, from: _from, ...labor } = fact;
      return { ...test, labor: { ...test.labor, ...labor } };
    }
    case 'packed':
      return { ...test, packingEach: fact.costEach };
    case 'removed':
      return remove(test, fact.part);
    case 'noted':
      return { ...test, notes: [...test.notes, fact.text] };
    case 'sourced': {
      const { type: _, ...label } = fact;
      return { ...test, labels: withLabel(test.labels, label) };
    }
    case 'sold':
      return { ...test, products: [...test.products.filter((part) => part !== fact.part), fact.part] };
    case 'binned':
      return { ...test, binned: [...test.binned, { part: fact.part, grams: fact.grams ?? ZERO }] };
    case 'cooked':
      return { ...test, cookedGrams: fact.grams };
    case 'served':
      return { ...test, servedGrams: fact.grams };
    case 'closed':
      return { ...test, status: 'closed', closedAt: recorded.at, closedFlagged: fact.flagged };
    case 'dropped':
      return { ...test, status: 'dropped' };
    case 'readyCutPriced':
    case 'tared':
    case 'chosen':
    case 'voiceChosen':
    case 'turned':
    case 'ended':
    case 'reminderSet':
    case 'reminderCancelled':
    case 'fired':
    case 'acknowledged':
    case 'undone':
    case 'corrected':
    case 'ground':
    case 'carriedOver':
    case 'cleaned':
    case 'batchBegun':
    case 'temperatureRead':
    case 'thermometerChecked':
    case 'coolingBegun':
    case 'lotEnded':
    case 'batchEnded':
      return test;
  }
}

/** What a part is credited at in the test; an inherited key such as "constructor" is no credit. */
export const creditIn = ({ credits }: Pick<Test, 'credits'>, part: string): Decimal | undefined =>
  Object.hasOwn(credits, part) ? credits[part] : undefined;

const creditsWith = ({ credits }: Test, part: string, perLb?: Decimal): Test['credits'] =>
  perLb === undefined ? credits : { ...credits, [part]: perLb };

/** A price said for the item becomes the test's own where it has none; one that it has stays. */
function priceOnce(received: Received, perLb: Decimal): Received {
  return received.perLb === undefined && received.cost === undefined ? { ...received, perLb } : received;
}

/** The part, or with the name `portions` all that was said of them, is no longer counted. */
function remove(test: Test, part: string): Test {
  if (part === PORTIONS) return { ...test, portions: NO_PORTIONS };
  return { ...test, parts: test.parts.filter((each) => each.part !== part) };
}

/** The name under which portions are removed or corrected. */
export const PORTIONS = 'portions';

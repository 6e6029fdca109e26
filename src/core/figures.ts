// What a test comes to. See docs/calculations.md for each formula with a worked example.
import { type CostFigures, costFigures, type Purchase, type Sums } from './costs.ts';
import { decimal, type Decimal, HUNDRED, sum, ZERO } from './decimal.ts';
import { costOf, type Money, type PerLb, perLbOf } from './money.ts';
import { type PortionFigures, portionFigures } from './portions.ts';
import { type Grams, toGrams } from './quantity.ts';
import { creditIn, type Part, type Received, type Test } from './test.ts';

export type { CostFigures } from './costs.ts';
export type { PortionBasis, PortionFigures } from './portions.ts';

export interface PartFigures {
  readonly part: string;
  readonly role: 'byproduct' | 'waste';
  readonly grams: Grams;
  readonly creditPerLb?: PerLb;
  /** Credit × weight; zero for waste. */
  readonly value: Money;
  readonly yieldPct: Decimal;
}

export interface LaborFigures {
  readonly minutes?: Decimal;
  readonly ratePerHour?: Decimal;
  /** Minutes ÷ 60 × rate; absent where either is unknown. */
  readonly cost?: Money;
  readonly avoidable: boolean;
}

export interface Figures {
  readonly receivedGrams: Grams;
  readonly pricePerLb?: PerLb;
  readonly purchaseCost?: Money;
  readonly parts: readonly PartFigures[];
  readonly portions?: PortionFigures;
  /** Received − everything weighed, the portions included; may be negative. */
  readonly unaccountedGrams: Grams;
  readonly unaccountedPct: Decimal;
  readonly creditTotal: Money;
  readonly labor: LaborFigures;
  /** Packing per portion × count; absent where either is unknown. */
  readonly packingCost?: Money;
  /** More weighed than received, by over the tolerance of 0.05 lb. */
  readonly overweight: boolean;
  readonly costs?: CostFigures;
  /** While overweight: the costs if the portions weighed only what is left of the piece. */
  readonly provisional?: { readonly portionGrams: Grams; readonly costs: CostFigures };
}

/** What the kitchen has set and the figures need. */
export interface CostSettings {
  /** Whether minutes at the table would not be paid if they were not worked. */
  readonly laborAvoidable: boolean;
}

/** By how much the weighings may come to more than the piece: scales differ, and wet meat drips. */
export const OVERWEIGHT_TOLERANCE: Grams = toGrams(decimal('0.05'), 'lb');

/** Everything that follows from the facts of a test. The received weight must be above 0; percentages are of it. */
export function figures(test: Test, settings: CostSettings): Figures {
  const known = computed.get(test);
  if (known?.settings === settings) return known.figures;
  const made = compute(test, settings);
  computed.set(test, { settings, figures: made });
  return made;
}

/** A test never changes, so that its figures are computed once, however many ask for them. */
const computed = new WeakMap<Test, { readonly settings: CostSettings; readonly figures: Figures }>();

function compute(test: Test, settings: CostSettings): Figures {
  const { received } = test;
  const parts = test.parts.map((part) => partFigures(part, test));
  const partGrams = sum(parts.map(({ grams }) => grams));
  const portions = portionFigures(test.portions, received.grams);
  const unaccountedGrams = received.grams.minus(partGrams).minus(portions?.grams ?? ZERO);
  const weighed = {
    receivedGrams: received.grams,
    parts,
    portions,
    unaccountedGrams,
    unaccountedPct: unaccountedGrams.times(HUNDRED).div(received.grams),
    creditTotal: sum(parts.map(({ value }) => value)),
    labor: laborFigures(test, settings),
    packingCost: portions?.count === undefined ? undefined : test.packingEach?.times(portions.count),
    overweight: unaccountedGrams.lt(OVERWEIGHT_TOLERANCE.negated()),
  };
  const purchase = purchaseOf(received);
  return { ...weighed, ...purchase, ...costed(weighed, purchase, received.grams.minus(partGrams)) };
}

/** What the portions of a test cost; while it is overweight, what they would cost if they weighed what is left. */
function costed(
  weighed: Figures,
  purchase: Purchase | undefined,
  leftGrams: Grams,
): Pick<Figures, 'costs' | 'provisional'> {
  const { portions } = weighed;
  if (portions === undefined || purchase === undefined || purchase.pricePerLb.lte(ZERO)) return {};
  if (!weighed.overweight) return { costs: costFigures(sumsOf(weighed, portions.grams), purchase, portions) };
  if (leftGrams.lte(ZERO)) return {};
  const costs = costFigures(sumsOf(weighed, leftGrams), purchase, sizesOf(portions, leftGrams));
  return { provisional: { portionGrams: leftGrams, costs } };
}

/** The weights of portions are in doubt while overweight: the target stands, else each has its share of what is left. */
function sizesOf(
  { targetGrams, count }: PortionFigures,
  leftGrams: Grams,
): Pick<PortionFigures, 'targetGrams' | 'meanGrams'> {
  if (targetGrams !== undefined) return { targetGrams };
  return count === undefined ? {} : { meanGrams: leftGrams.div(count) };
}

/** What a test takes in and gives, if its portions weigh so much. Labour and packing that are not known count 0. */
export function sumsOf(weighed: Omit<Figures, 'costs'>, portionGrams: Grams): Sums {
  const { labor } = weighed;
  const laborCost = labor.cost ?? ZERO;
  return {
    receivedGrams: weighed.receivedGrams,
    portionGrams,
    credit: weighed.creditTotal,
    avoidableLabor: labor.avoidable ? laborCost : ZERO,
    fixedLabor: labor.avoidable ? ZERO : laborCost,
    packing: weighed.packingCost ?? ZERO,
  };
}

/** Yield on the weight received. A part is a by-product where its credit is above 0. */
function partFigures({ part, grams }: Part, test: Test): PartFigures {
  const creditPerLb = creditIn(test, part);
  const isByproduct = creditPerLb?.gt(ZERO) === true;
  return {
    part,
    role: isByproduct ? 'byproduct' : 'waste',
    grams,
    creditPerLb,
    value: isByproduct ? costOf(grams, creditPerLb) : ZERO,
    yieldPct: grams.times(HUNDRED).div(test.received.grams),
  };
}

/** A price per pound and the sum, whichever was said; undefined where neither was. */
function purchaseOf({ grams, perLb, cost }: Received): Purchase | undefined {
  if (cost !== undefined) return { purchaseCost: cost, pricePerLb: perLb ?? perLbOf(cost, grams) };
  return perLb && { purchaseCost: costOf(grams, perLb), pricePerLb: perLb };
}

const MINUTES_PER_HOUR = decimal('60');

function laborFigures({ labor: { minutes, ratePerHour } }: Test, settings: CostSettings): LaborFigures {
  const cost = ratePerHour && minutes?.times(ratePerHour).div(MINUTES_PER_HOUR);
  return { minutes, ratePerHour, cost, avoidable: settings.laborAvoidable };
}

// Temperatures: what is published, with its source, and how a reading is judged. °F inside.
// Food Code: FDA Food Code 2022. FSIS: USDA, safe minimum internal temperatures.
import { type Decimal, decimal, roundTo } from './decimal.ts';
import type { KitchenUnit } from './quantity.ts';
import type { Food, Stage } from './safety-facts.ts';

/** Ground, needled and injected meat, for 17 s: Food Code 3-401.11(A)(2). */
export const GROUND_CODE_F = decimal('155');
/** Ground meat, without a time: FSIS. */
export const GROUND_FSIS_F = decimal('160');
/** Ground trim cut in house: common practice. */
export const GROUND_HOUSE_F = decimal('165');
/** Poultry: Food Code 3-401.11(A)(3) and FSIS. */
export const POULTRY_F = decimal('165');
/** Whole steaks, chops, roasts: with 3 min of rest FSIS, for 15 s Food Code 3-401.11(A)(1). */
export const WHOLE_F = decimal('145');
/** Cold and hot holding: Food Code 3-501.16. */
export const COLD_F = decimal('41');
export const HOT_F = decimal('135');
/** The step on the way of cooked food from 135 °F to 41 °F: Food Code 3-501.14(A). */
export const SEVENTY_F = decimal('70');

export type TemperatureUnit = 'F' | 'C';

/** Assumption: a kitchen that weighs in kilograms reads Celsius. */
export const degreeUnit = (unit: KitchenUnit): TemperatureUnit => (unit === 'lb' ? 'F' : 'C');

const FACTOR = decimal('1.8');
const ZERO_C_IN_F = decimal('32');
/** Exact: finite decimals. */
export const toF = (degrees: Decimal, unit: TemperatureUnit): Decimal =>
  unit === 'F' ? degrees : degrees.times(FACTOR).plus(ZERO_C_IN_F);
export const toC = (degreesF: Decimal): Decimal => degreesF.minus(ZERO_C_IN_F).div(FACTOR);

/** Assumption: no food in a kitchen is colder than a deep freezer; none that holds water is hotter than boiling water. */
const COLDEST_F = decimal('-20');
const BOILING_F = decimal('212');
export const isPossible = (degreesF: Decimal): boolean => degreesF.gte(COLDEST_F) && degreesF.lte(BOILING_F);

/** A kitchen may ask for more than is published, never for less. */
export const mayBeGroundLimit = (degreesF: Decimal): boolean =>
  degreesF.gte(GROUND_CODE_F) && degreesF.lte(BOILING_F);

/** Assumption: meat is frozen below this, and no limit for cold holding. */
const COLDEST_LIMIT_F = decimal('28');
export const mayBeColdLimit = (degreesF: Decimal): boolean =>
  degreesF.lte(COLD_F) && degreesF.gte(COLDEST_LIMIT_F);

/** What food of a kind is cooked to; undefined where nothing is published here. */
export function cookLimit(food: Food | undefined, groundCookF: Decimal | undefined): Decimal | undefined {
  switch (food) {
    case 'poultry':
      return POULTRY_F;
    case 'whole':
      return WHOLE_F;
    case 'cooked':
      return undefined;
    // Needled, cubed or injected: bacteria are inside as in ground meat (Food Code 3-201.11(E), 3-401.11(C)).
    case 'ground':
    case 'needled':
    case 'trim':
    case 'raw':
    case undefined:
      return groundCookF ?? GROUND_HOUSE_F;
  }
}

/**
 * Judged as a person reads it: in a kitchen of Celsius the published 71.1 °C is kept by a reading of 71.1 °C, although
 * that is 159.98 °F.
 */
const asRead = (degreesF: Decimal, unit: KitchenUnit): Decimal =>
  degreeUnit(unit) === 'F' ? degreesF : roundTo(toC(degreesF), 1);

export const isAtLeast = (degreesF: Decimal, limitF: Decimal, unit: KitchenUnit): boolean =>
  asRead(degreesF, unit).gte(asRead(limitF, unit));
export const isAtMost = (degreesF: Decimal, limitF: Decimal, unit: KitchenUnit): boolean =>
  asRead(degreesF, unit).lte(asRead(limitF, unit));

/** Assumption: raw meat in the cold is never this warm, and what is on the heat is measured when it is hotter. */
const WARMEST_RAW_F = decimal('90');
const COOLEST_COOKED_F = decimal('120');

/** What a reading of a food was taken for; undefined where both are fair. */
export function stageOf(food: Food | undefined, degreesF: Decimal): Stage | undefined {
  if (food === 'cooked') return 'held';
  const isRaw = food === 'raw' || food === 'trim';
  if (isRaw && degreesF.lte(WARMEST_RAW_F)) return 'raw';
  if (isRaw) return degreesF.gte(COOLEST_COOKED_F) ? 'cook' : undefined;
  return degreesF.gte(WARMEST_RAW_F) ? 'cook' : undefined;
}

/** Whether a reading taken for one of these can have been it. */
export function fitsStage(stage: Stage, degreesF: Decimal): boolean {
  switch (stage) {
    case 'raw':
      return degreesF.lte(WARMEST_RAW_F);
    case 'cook':
      return degreesF.gte(WARMEST_RAW_F);
    case 'held':
    case 'cooling':
      return true;
  }
}

/** The ice point, ± 2 °F: FSIS. Boiling water at sea level; it boils 1 °F lower for some 500 feet of height. */
export const CHECK_POINTS = { ice: ZERO_C_IN_F, boiling: BOILING_F } as const;
export const CHECK_TOLERANCE_F = decimal('2');

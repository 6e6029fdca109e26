// How a kitchen is set up: as it was made, and as it was set by word since.
import type { Decimal } from './decimal.ts';
import type { CostSettings } from './figures.ts';
import type { Grams, KitchenUnit } from './quantity.ts';

export interface Settings extends CostSettings {
  readonly unit: KitchenUnit;
  /** ISO 4217 code. */
  readonly currency: string;
  /** IANA zone. */
  readonly timezone: string;
  readonly language: string;
  readonly laborRatePerHour?: Decimal;
  /** Costs are shown to cutters too. */
  readonly cuttersSeeCosts?: boolean;
  /** What ground trim is cooked to here, °F. */
  readonly groundCookF?: Decimal;
  /** The warmest that raw meat may be here, °F. */
  readonly coldF?: Decimal;
  /** By how much a portion may be off its size. */
  readonly portionTolerance?: Grams;
  /** When the kitchen was opened, a UTC instant: nothing was due before. */
  readonly openedAt?: string;
  /** Local time of the summary, "22:00"; where it is not set there is none. */
  readonly summaryAt?: string | undefined;
  /** The weekday, 1 is Monday, on which the week is told besides. */
  readonly weekSummaryOn?: number | undefined;
  /** Who gets the summary, where it is not the team. */
  readonly summaryTo?: string | undefined;
  /** A day on which nothing was cut is told in one line, unless this says no. */
  readonly tellsEmptyDay?: boolean;
  /** After how many minutes an alarm that nobody has acknowledged rings again. */
  readonly escalateMinutes?: number;
  /** Minutes after which the temperature of a batch is asked for again, where somebody has heard the alarm and no reading came. */
  readonly cookAgainMinutes?: number;
  /** Who is told then. */
  readonly secondPerson?: string | undefined;
}

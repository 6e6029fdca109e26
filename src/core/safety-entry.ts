// What an entry says of grinding, cooking and cooling, slot by slot (see entry.ts).
import type { Decimal } from './decimal.ts';
import type { LotId } from './facts.ts';
import type { Label } from './label.ts';
import type { Grams } from './quantity.ts';
import type { Food } from './safety-facts.ts';

/** Degrees Fahrenheit, whatever was spoken. */
export type DegreesF = Decimal;

export interface SafetySlots {
  grind: { weight?: Grams; part?: string; item?: string } & Label & { another?: boolean };
  /** What the label of the supplied meat says. */
  grindSource: Label & { lot?: LotId };
  carryOver: { weight?: Grams; none?: boolean; lot?: LotId };
  /** `before`: before what was ground last. */
  cleaned: { before?: boolean };
  batch: { lot?: LotId };
  /** The batch on the heat was thrown away. */
  endBatch: { lot?: LotId };
  /** A part that was weighed was thrown away. */
  discard: { part: string; weight?: Grams; item?: string };
  endLot: { how: 'used' | 'thrown'; lot?: LotId };
  temperature: {
    degrees: DegreesF;
    what?: string;
    food?: Food;
    stage?: 'raw' | 'cook' | 'cooling';
    lot?: LotId;
    /** Which batch of the lot, from 1. */
    batch?: number;
    /** A number behind the food, and no word of heat. */
    bare?: boolean;
  };
  thermometer: { point: 'ice' | 'boiling'; degrees: DegreesF };
  cooling: { what: string };
  askTemperature: { part?: string; food?: Food };
  /** `file`: only the file is wanted. */
  askGrindLog: { format?: 'csv' | 'xlsx'; file?: boolean };
  /** How it stands with the open grinds. */
  askGrind: object;
  askThermometerLog: object;
  /** `last`: only the newest. */
  askReadings: { format?: 'csv' | 'xlsx'; file?: boolean; last?: boolean };
  askStorage: object;
}

// The port of the replay into a kitchen that lives only as long as the replay.
import type { Json } from '../../core/entry-json.ts';
import type { Settings } from '../../core/kitchen.ts';
import type { Table } from './table.ts';

export interface Scratch extends Table {
  /** All tests in the order of opening, under the names that the outside knows. */
  readonly tests: () => Promise<readonly Json[]>;
}

/** Opens an empty kitchen that nothing outlives. */
export type OpenScratch = (settings: Settings) => Promise<Scratch>;

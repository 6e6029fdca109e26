// The port to the voice notes that a kitchen keeps: each for as many days as the kitchen has set by word, then deleted.
import type { KitchenId } from './store.ts';

export interface Recording {
  readonly kitchen: KitchenId;
  /** Unique in the kitchen: kept again, it is the same one. */
  readonly id: string;
  readonly bytes: Uint8Array;
  /** UTC instant, ISO 8601. */
  readonly at: string;
}

export type KeepRecording = (recording: Recording) => Promise<void>;

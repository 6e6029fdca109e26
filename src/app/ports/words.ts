// The port of a channel to words alone: no kitchen, no test, nothing kept.
import type { Json } from '../../core/entry-json.ts';
import type { HeardAs } from './table.ts';

export interface Judged {
  readonly entries: readonly Json[];
  /** One short question, or null. */
  readonly ask: string | null;
}

/** What a line says by itself; of one that was heard, how surely. */
export type JudgeLine = (line: string, heard?: HeardAs) => Judged;

// The port of a channel to words alone: no kitchen, no test, nothing kept.
import type { Json } from '../../core/entry-json.ts';

export interface Judged {
  readonly entries: readonly Json[];
  /** One short question, or null. */
  readonly ask: string | null;
}

/** What a line says by itself. */
export type JudgeLine = (line: string) => Judged;

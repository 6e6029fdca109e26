// What becomes of words that were heard and not typed, by how surely they were heard: recorded, asked about, or left.
// The points were chosen on the curve of right against recorded wrong in docs/voice.md.
import type { Kind } from '../core/entry.ts';
import { type Reply, say } from '../core/reply.ts';
import { isHeardAsk } from '../intents/doubt.ts';
import { isQuestion } from '../intents/index.ts';
import type { Heeded } from './converse.ts';
import type { HeardAs } from './ports/table.ts';

/** From here on an entry is recorded as it was heard; below it waits for a word. */
const RECORD_FROM = 0.9;
/** From here on a question of the person is answered: nothing is recorded by it, and what was heard is shown. */
const ANSWER_FROM = 0.85;
/** Below this it is taken for noise or for talk that is not for us. */
const ASK_FROM = 0.25;

/** What was typed is sure. Whether it is sure enough for an entry of the kind; without a kind, for any. */
export const isSure = (heard: HeardAs | undefined, kind?: Kind): boolean =>
  heard === undefined || heard.confidence >= (kind && isQuestion(kind) ? ANSWER_FROM : RECORD_FROM);

export const isNoise = ({ confidence }: HeardAs): boolean => confidence < ASK_FROM;

/** What was heard is shown with what was made of it, so that a wrong number is seen; a question about it shows it already. */
export function withHeard(words: string, { say: replies, asked, outcome }: Heeded): readonly Reply[] {
  if (outcome === 'ignored' || (asked !== undefined && isHeardAsk(asked))) return replies;
  return [say('heard', { words }), ...replies];
}

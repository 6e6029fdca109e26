// The question that stands while a line is taken up: put, put once more, let go.
import type { Entry } from '../core/entry.ts';
import type { Json } from '../core/entry-json.ts';
import type { Recorded } from '../core/facts.ts';
import type { Paper } from '../core/paper.ts';
import type { Question } from '../core/question.ts';
import { type Reply, say } from '../core/reply.ts';
import { figuresOf } from '../intents/card.ts';
import type { Asked, Scene } from '../intents/intent.ts';
import type { HeardAs, Outcome } from './ports/table.ts';

export interface HeardWords extends HeardAs {
  readonly words: string;
}

/** What has come of a line so far. */
export interface Progress {
  scene: Scene;
  question: Question | undefined;
  readonly message: string;
  readonly heard: HeardWords | undefined;
  readonly facts: Recorded[];
  readonly entries: Json[];
  readonly outcomes: Outcome[];
  readonly say: Reply[];
  readonly papers: Paper[];
  /** The question that this line put. */
  put: Reply | undefined;
  /** Another question was left unasked. */
  isMoreUnclear: boolean;
  count: number;
}

/** An answer that does not decide: the question is put once more, then it is let go. */
export function repeat(progress: Progress, question: Question): void {
  if (question.repeats > 0) {
    progress.question = undefined;
    progress.outcomes.push('answered');
    progress.say.push(say('let-go'));
    return;
  }
  progress.question = { ...question, repeats: question.repeats + 1 };
  progress.outcomes.push('asked');
  progress.put = question.asked;
}

/** A question of this very line stands beside the line's other entries. */
export const isOfThisLine = (progress: Progress): boolean => progress.put !== undefined;

/** Where what was asked about is recorded, or is nothing to record (to close, to take back). */
export const leavesThingsAsTheyAre = ({ recorded, again }: Question): boolean =>
  recorded || again?.said.kind === 'finish' || again?.said.kind === 'undo';

/** What was asked about and is now let go was never recorded: said, unless the new entry is about the same thing. */
export function noteWhatIsLost(progress: Progress, { recorded, again, wants }: Question, entry: Entry): void {
  const lost = again?.said ?? wants?.held;
  if (recorded || lost === undefined || lost.kind === 'finish' || lost.kind === 'undo') return;
  if (entry.kind === 'correct' || (lost.kind === entry.kind && partIn(lost) === partIn(entry))) return;
  progress.say.push(say('dropped-question'));
}

const partIn = (entry: object): unknown => ('part' in entry ? entry.part : undefined);

/** Later entries of the same line may have made good what was too heavy. */
export function settleOverweight(progress: Progress): void {
  const id = progress.put === undefined ? undefined : progress.question?.overweight;
  const test = id === undefined ? undefined : progress.scene.kitchen.tests.get(id);
  if (test !== undefined && !(test.status === 'open' && figuresOf(progress.scene, test).overweight))
    letGo(progress);
}

export function letGo(progress: Progress): void {
  progress.question = undefined;
  progress.put = undefined;
}

/**
 * Puts a question. Of several in one line the first stands; for the others the entry is to be said again. The third
 * try that is not understood is told how to type it.
 */
export function ask(progress: Progress, asked: Asked, recorded: boolean): void {
  progress.outcomes.push('asked');
  if (progress.put !== undefined && progress.question !== undefined) {
    // Still too heavy with the next entry of the line: the newer figures are asked about.
    if (asked.overweight === undefined || asked.overweight !== progress.question.overweight) {
      progress.isMoreUnclear ||= !recorded;
      return;
    }
  }
  const tries =
    progress.question?.asked.id === UNREAD && asked.asked.id === UNREAD ? progress.question.repeats + 1 : 0;
  progress.question = { ...asked, askedAt: progress.scene.at, recorded, repeats: tries };
  progress.put = tries >= MOST_TRIES ? say('how-to-type') : asked.asked;
}

const UNREAD = 'ask-unread';
const MOST_TRIES = 2;

// One line in a conversation: what it answers, what it records, what it asks. No storage, no clock, no wording.
import type { Entry } from '../core/entry.ts';
import { entryJson, type Json } from '../core/entry-json.ts';
import type { Recorded } from '../core/facts.ts';
import { evolve, type Kitchen } from '../core/kitchen.ts';
import type { Paper } from '../core/paper.ts';
import type { Question } from '../core/question.ts';
import { type Reply, say } from '../core/reply.ts';
import { doubt, isStartling } from '../intents/doubt.ts';
import { decide, isQuestion } from '../intents/index.ts';
import type { Decision, Scene } from '../intents/intent.ts';
import { answerTo } from './answer.ts';
import { isSure } from './heard.ts';
import type { Outcome } from './ports/table.ts';
import {
  ask,
  type HeardWords,
  isOfThisLine,
  leavesThingsAsTheyAre,
  letGo,
  noteWhatIsLost,
  type Progress,
  repeat,
  settleOverweight,
} from './standing.ts';
import type { Understood } from './understand.ts';

/** Of several outcomes of a line, the first of these. */
const WEIGHTIEST: readonly Outcome[] = ['asked', 'refused', 'recorded', 'answered', 'ignored'];

export interface Conversation {
  readonly scene: Scene;
  /** The question that stands for this speaker. */
  readonly question: Question | undefined;
  /** The beginning of the identities of this line's entries. */
  readonly message: string;
  /** The words where they were heard, and how surely. */
  readonly heard?: HeardWords;
}

export interface Heeded {
  readonly kitchen: Kitchen;
  readonly question: Question | undefined;
  readonly facts: readonly Recorded[];
  readonly entries: readonly Json[];
  readonly outcome: Outcome;
  readonly say: readonly Reply[];
  /** The files that go with it. */
  readonly papers: readonly Paper[];
  /** The question that was put by this line. */
  readonly asked: Reply | undefined;
}

const LAPSES_AFTER_MS = 30 * 60 * 1000;

/** Takes up everything that a line says, in the order said. */
export function converse(
  { scene, question, message, heard }: Conversation,
  understood: readonly Understood[],
): Heeded {
  const lapsed =
    question !== undefined && Date.parse(scene.at) - Date.parse(question.askedAt) > LAPSES_AFTER_MS;
  const progress: Progress = {
    scene, question: lapsed ? undefined : question, message, heard, facts: [], entries: [], outcomes: [], say: [], papers: [], put: undefined, isMoreUnclear: false, count: 0,
  }; // prettier-ignore
  for (const one of understood) {
    if ('ask' in one) ask(progress, one.ask, false);
    else takeUp(progress, one.entry);
  }
  settleOverweight(progress);
  const asked = progress.question === undefined ? undefined : progress.put;
  const outcomes =
    asked === undefined ? progress.outcomes.filter((each) => each !== 'asked') : progress.outcomes;
  const outcome = WEIGHTIEST.find((each) => outcomes.includes(each)) ?? 'ignored';
  const { facts, entries } = progress;
  const more = progress.isMoreUnclear ? [say('say-rest-again')] : [];
  const said = asked === undefined ? progress.say : [...progress.say, asked, ...more];
  return {
    kitchen: progress.scene.kitchen,
    question: progress.question,
    facts,
    entries,
    outcome,
    say: said,
    papers: progress.papers,
    asked,
  };
}

/** An entry answers the standing question, leaves it alone, or drops it and stands for itself. */
function takeUp(progress: Progress, entry: Entry): void {
  const { question } = progress;
  if (question === undefined) return settleOrDoubt(progress, entry);
  const answer = answerTo(question, entry, (test) => progress.scene.kitchen.tests.get(test)?.item);
  // An answer that was half heard decides nothing, but for the amount or name that it may have filled in.
  if (!isSure(progress.heard) && answer.is !== 'none' && !fillsIn(entry)) return repeat(progress, question);
  switch (answer.is) {
    case 'entry':
      letGo(progress);
      return isSure(progress.heard)
        ? settleEntry(progress, answer.entry)
        : settleOrDoubt(progress, answer.entry);
    case 'repeat':
      return repeat(progress, question);
    case 'drop':
      letGo(progress);
      progress.entries.push(entryJson(entry));
      progress.outcomes.push('answered');
      progress.say.push(say(leavesThingsAsTheyAre(question) ? 'stands-as-it-is' : 'not-recorded'));
      return;
    case 'none':
      if (isQuestion(entry.kind) || isOfThisLine(progress)) return settleOrDoubt(progress, entry);
      return settleInstead(progress, question, entry);
  }
}

/** Another entry drops the question; what is not for us does not. */
function settleInstead(progress: Progress, question: Question, entry: Entry): void {
  letGo(progress);
  settleOrDoubt(progress, entry);
  if (progress.outcomes.at(-1) === 'ignored') progress.question = question;
  else noteWhatIsLost(progress, question, entry);
}

const fillsIn = ({ kind }: Entry): boolean => kind === 'amount' || kind === 'name';

function settleOrDoubt(progress: Progress, entry: Entry): void {
  const { scene, heard } = progress;
  const isDoubtful = heard !== undefined && (!isSure(heard, entry.kind) || isStartling(scene, entry));
  if (!isDoubtful || decide(scene, entry).is === 'ignored') return settleEntry(progress, entry);
  ask(progress, doubt(entry, heard.words), false);
}

function settleEntry(progress: Progress, entry: Entry): void {
  carry(progress, entry);
  const decision = decide(progress.scene, entry);
  progress.outcomes.push(decision.is);
  if (decision.is === 'ignored') return;
  if (decision.is === 'asked') {
    progress.outcomes.pop();
    return ask(progress, decision.ask, false);
  }
  progress.entries.push(entryJson(decision.is === 'refused' ? entry : (decision.shown ?? entry)));
  if (decision.is === 'recorded') record(progress, decision);
  else progress.say.push(...decision.say);
  if (decision.is === 'answered' && decision.paper !== undefined) progress.papers.push(decision.paper);
}

/** The item of an entry holds for the entries after it in the same line. */
function carry(progress: Progress, entry: Entry): void {
  const item = 'item' in entry ? entry.item : undefined;
  if (item !== undefined) progress.scene = { ...progress.scene, carried: item };
}

function record(progress: Progress, decision: Extract<Decision, { is: 'recorded' }>): void {
  const { speaker, at } = progress.scene;
  const entry = `${progress.message}.${progress.count}`;
  progress.count += 1;
  for (const fact of decision.facts) {
    const recorded: Recorded = { ...fact, entry, speaker, at };
    progress.facts.push(recorded);
    progress.scene = { ...progress.scene, kitchen: evolve(progress.scene.kitchen, recorded) };
  }
  const response = decision.respond(progress.scene);
  progress.say.push(...response.say);
  if (response.ask !== undefined) ask(progress, response.ask, true);
}

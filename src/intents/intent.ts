// What every intent is: the slots that its sentences fill, and what it decides in a scene. One file an intent.
import type { Entry, EntryOf, Kind } from '../core/entry.ts';
import type { Fact, LotId, Recorded, TestId } from '../core/facts.ts';
import type { Kitchen } from '../core/kitchen.ts';
import type { Paper } from '../core/paper.ts';
import type { Stretch } from '../core/period.ts';
import type { UsualWeights } from '../core/plausible.ts';
import type { Question, Wanted } from '../core/question.ts';
import type { Reply } from '../core/reply.ts';
import type { Role } from '../core/role.ts';
import type { DuesOf } from '../core/schedule.ts';
import type { Bands } from '../core/slip.ts';

/** A closed test as a history shows it: plain figures by name. */
export interface PastTest {
  readonly item: string;
  readonly closedAt?: string;
  readonly figures?: Readonly<Record<string, string>>;
}

/** The closed tests of a stretch of days, the oldest first. */
export interface PastDays {
  readonly stretch: Stretch;
  /** When it is told. */
  readonly at: string;
  readonly tests: readonly PastTest[];
  /** Of each item the verdicts that held, from before these days to their end. */
  readonly choices: ReadonlyMap<string, readonly string[]>;
}

/** Where an entry is said: the kitchen as it is, who speaks, and when. */
export interface Scene {
  readonly kitchen: Kitchen;
  readonly speaker: string;
  /** UTC instant, ISO 8601. */
  readonly at: string;
  readonly usual: UsualWeights;
  /** What parts usually come to, before the kitchen has tests of its own. */
  readonly bands?: Bands;
  /** Of the speaker: what they may change. */
  readonly role: Role;
  /** The names of those whose speaker's name is none to be read, by it; where it is given, who is not in it has left. */
  readonly people?: ReadonlyMap<string, string>;
  /** Whether all who read the answer may see costs. */
  readonly seesCosts: boolean;
  /** The item said before in the same line: later entries of the line go to its test. */
  readonly carried?: string;
  /** The newest closed tests of an item; read beforehand where somebody asks for them. */
  readonly past: readonly PastTest[];
  /** Read beforehand where somebody asks how it went. */
  readonly days?: PastDays;
  /** What may be due; the kitchen's own where it is not given. */
  readonly duesOf?: DuesOf;
  /** The name of the engine that hears voice notes, where they are heard. */
  readonly hears?: string;
}

export interface NewFact {
  readonly fact: Fact;
  readonly test?: TestId;
  readonly lot?: LotId;
  readonly item?: string;
}

/** The test or the lot that a fact is about, where it is at hand. */
export function aboutOf(
  { kitchen }: Scene,
  { test, lot }: Pick<Recorded, 'test' | 'lot'>,
): { readonly facts: readonly Recorded[] } | undefined {
  if (test !== undefined) return kitchen.tests.get(test);
  return lot === undefined ? undefined : kitchen.lots.get(lot);
}

/** A question before it is put. */
export type Asked = Pick<Question, 'asked' | 'choices' | 'wants' | 'again' | 'overweight'>;

/** What is said when the facts are in; the question is about what is recorded. */
export interface Response {
  readonly say: readonly Reply[];
  readonly ask?: Asked;
}

/** `shown`: the entry as it was recorded, where it differs from what was said (a container's weight taken off). */
export type Decision =
  | {
      readonly is: 'recorded';
      readonly shown?: Entry;
      readonly facts: readonly NewFact[];
      readonly respond: (after: Scene) => Response;
    }
  | { readonly is: 'asked'; readonly ask: Asked }
  | {
      readonly is: 'answered';
      readonly shown?: Entry;
      readonly say: readonly Reply[];
      readonly paper?: Paper;
    }
  | { readonly is: 'refused'; readonly say: readonly Reply[] }
  | { readonly is: 'ignored' };

/** The entry comes to what another one would: it is decided as that one, and shown as itself. */
export interface Becomes {
  readonly is: 'becomes';
  readonly entry: Entry;
}
export const becomes = (entry: Entry): Becomes => ({ is: 'becomes', entry });

export interface Intent<K extends Kind> {
  /** The slots that a sentence of this intent may fill. */
  readonly slots: readonly string[];
  readonly decide: (
    scene: Scene,
    entry: EntryOf<K>,
  ) => K extends 'correct' | 'product' | 'weigh' ? Decision | Becomes : Decision;
  /** Only for those who may see costs. */
  readonly costs?: true;
  /** Makes one entry of what the words leave open ("12 portions 11.2 lb" is their weight together). */
  readonly settle?: (entry: EntryOf<K>) => EntryOf<K>;
}

export const recorded = (facts: readonly NewFact[], respond: (after: Scene) => Response): Decision => ({
  is: 'recorded',
  facts,
  respond,
});
/** The decision with the entry as it was recorded, or would have been if it were not there already. */
export const showing = (decision: Decision, shown: Entry): Decision =>
  decision.is === 'recorded' || decision.is === 'answered' ? { ...decision, shown } : decision;

export const answered = (...say: readonly Reply[]): Decision => ({ is: 'answered', say });
/** Answered in words, with a file to it. */
export const withPaper = (paper: Paper, ...say: readonly Reply[]): Decision => ({
  is: 'answered',
  say,
  paper,
});
export const refused = (...say: readonly Reply[]): Decision => ({ is: 'refused', say });

/** Asks, with what the answers make. `again`: saying the same entry again accepts it as this one. */
export function asks(
  asked: Reply,
  how: { choices?: Asked['choices']; wants?: Wanted; again?: Asked['again'] } = {},
): Decision {
  return { is: 'asked', ask: { asked, choices: how.choices ?? {}, wants: how.wants, again: how.again } };
}

/** Asks whether the entry is meant; a yes and the same said again record it. */
export function confirm(asked: Reply, entry: Entry, wants?: Wanted): Decision {
  const sure = { ...entry, sure: true as const };
  return asks(asked, { choices: { yes: sure }, again: { said: entry, accepts: sure }, wants });
}

/** An entry without one of its slots, to be filled by the answer. */
export function lacking(entry: Entry, slot: string): Wanted {
  const kept = Object.entries(entry).filter(([name]) => name !== slot);
  return { held: { ...Object.fromEntries(kept), kind: entry.kind }, slot };
}

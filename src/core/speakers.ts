// What each speaker last did in a kitchen: which test is theirs, and what they can take back or correct.
import type { Recorded, TestId } from './facts.ts';

/** One entry of a speaker and the facts that it made, for undo and correction. */
export interface RecentEntry {
  readonly entry: string;
  readonly facts: readonly Recorded[];
}

export interface SpeakerMemory {
  /** The tests that this speaker opened, wrote to or turned to, the last one last. */
  readonly tests: readonly TestId[];
  /** Their newest entries that still stand, newest last. */
  readonly recent: readonly RecentEntry[];
}

export type Speakers = ReadonlyMap<string, SpeakerMemory>;

/** How many entries of a speaker are remembered. */
export const RECENT_KEPT = 40;
/** How many tests of a speaker are remembered: so many may be closed before the one to go back to is forgotten. */
const TESTS_KEPT = 12;

/** With what one speaker last did, from that speaker's newest facts in the order of the log. */
export function rememberSpeaker(speakers: Speakers, speaker: string, facts: readonly Recorded[]): Speakers {
  const fresh: Speakers = new Map(speakers).set(speaker, { tests: [], recent: [] });
  return facts.reduce(evolveSpeakers, fresh);
}

/** An undo takes the entry that it voids off the list of its speaker and is itself none; a test written to becomes the speaker's. */
export function evolveSpeakers(speakers: Speakers, recorded: Recorded): Speakers {
  const { test, fact } = recorded;
  // What the clock brought is nobody's entry.
  if (fact.type === 'fired') return speakers;
  const before = speakers.get(recorded.speaker) ?? { tests: [], recent: [] };
  // Trim that is thrown away is of every test that has some.
  const tests =
    test === undefined || fact.type === 'binned'
      ? before.tests
      : [...before.tests.filter((each) => each !== test), test].slice(-TESTS_KEPT);
  const after = { tests, recent: evolveRecent(before.recent, recorded) };
  return new Map(speakers).set(recorded.speaker, after);
}

function evolveRecent(recent: SpeakerMemory['recent'], recorded: Recorded): SpeakerMemory['recent'] {
  const { fact, entry } = recorded;
  if (fact.type === 'turned') return recent;
  if (fact.type === 'undone' && fact.bare) return recent.filter((each) => each.entry !== fact.target);
  const last = recent.at(-1);
  if (last?.entry === entry) return [...recent.slice(0, -1), { entry, facts: [...last.facts, recorded] }];
  return [...recent.slice(-RECENT_KEPT + 1), { entry, facts: [recorded] }];
}

/** What a speaker said of late. That they have heard an alarm is no entry to go on from. */
export const saidBy = (speakers: Speakers, speaker: string): readonly RecentEntry[] =>
  (speakers.get(speaker)?.recent ?? []).filter(({ facts }) =>
    facts.some(({ fact }) => fact.type !== 'acknowledged'),
  );

// The port of a channel into a kitchen: one message in, one answer out.
import type { Hearers } from '../../core/due.ts';
import type { Entry } from '../../core/entry.ts';
import type { Json } from '../../core/entry-json.ts';
import type { TestId } from '../../core/facts.ts';
import type { Kitchen } from '../../core/kitchen.ts';
import type { Question } from '../../core/question.ts';
import type { Role } from '../../core/role.ts';
import type { Delivery } from './mailbox.ts';
import type { Posted } from './store.ts';
import type { AnswerFile } from './paper.ts';

/** What became of a line: a question of ours now stands; understood but nothing to do it to; facts changed; answered; not for us. */
export type Outcome = 'asked' | 'refused' | 'recorded' | 'answered' | 'ignored';

/** How a recogniser heard the text of a message. */
export interface HeardAs {
  /** 0 to 1, as the engine estimates it. */
  readonly confidence: number;
}

export interface Message {
  /** Unique in the kitchen: a second delivery is answered as before and changes nothing. */
  readonly id: string;
  readonly speaker: string;
  /** UTC instant, ISO 8601. */
  readonly at: string;
  readonly text: string;
  /** Of the speaker. */
  readonly role: Role;
  /** The least of those who read the answer, where others read it too; else it is the speaker's. */
  readonly readBy?: Role;
  /** Only where the text was heard: what was heard too badly is put as a question before it is recorded. */
  readonly heard?: HeardAs;
  /** What was pressed, in the place of words. */
  readonly pressed?: Entry;
  /** The test that it is about, where it says no cut: an answer to the card of that test. */
  readonly about?: TestId;
  /** An earlier message of the speaker, which this one puts right. */
  readonly replaces?: string;
  /** The names of those whose speaker's name is none to be read, by it. */
  readonly people?: ReadonlyMap<string, string>;
  /** What is posted with the answer: stored with the facts, and by itself where there are none. */
  readonly deliver?: (answer: Answer) => Delivery | Promise<Delivery>;
}

/** A test that a message changed. */
export interface Touched {
  readonly id: TestId;
  readonly status: 'open' | 'closed' | 'dropped';
  /** The newest entry of the speaker in it that can be taken back. */
  readonly undoable?: string;
}

export interface Answer {
  readonly reply: string;
  readonly outcome: Outcome;
  readonly entries: readonly Json[];
  /** The question that this message left standing, in words. */
  readonly ask: string | null;
  readonly touched: readonly Touched[];
  /** Whether another question stands than before, or none; and the answers in one word that the new one takes. */
  readonly asksOther: boolean;
  readonly choices: readonly string[];
  /** The reply in few words, where the speaker wants to hear it. */
  readonly aloud?: string;
  /** What the speaker recorded last with this message, which can be taken back. */
  readonly undoable?: string;
  /** The reply for somebody else than the speaker. */
  readonly replyFor: (reader: Role) => string;
  /** A test at a glance. */
  readonly cardFor: (test: TestId, reader: Role) => string;
  /** What goes with the reply, for those who read it, each made when it is asked for; absent where there is none. */
  readonly files?: readonly AnswerFile[];
}

/** Something due that is told now. */
export interface Told {
  readonly key: string;
  /** UTC instants, ISO 8601: when it was due, and now. */
  readonly dueAt: string;
  readonly at: string;
  readonly to: Hearers;
  readonly alarm: boolean;
  /** Each reader is told what they may see. */
  readonly words: (role: Role) => string;
}

export interface Telling {
  /** UTC instant, ISO 8601. */
  readonly at: string;
  /** What is posted with it: stored in the same transaction. */
  readonly post?: (told: Told) => Promise<Posted>;
}

export interface Table {
  /** Tells what is due and was not told: each once for ever. What was due longer ago comes first. */
  readonly tellDue: (telling: Telling) => Promise<readonly Told[]>;
  /** When something is due next, or was; at or after the instant given the same holds until the kitchen changes. */
  readonly nextDue: (at: string) => string | undefined;
  readonly take: (message: Message) => Promise<Answer>;
  /** What a message would come to; nothing is kept. */
  readonly weighUp: (message: Message) => Promise<Answer>;
  /** The kitchen as it is now. */
  readonly kitchen: () => Kitchen;
  /** Our question that stands for a speaker. */
  readonly questionFor: (speaker: string) => Question | undefined;
}

// The port to whatever keeps a kitchen. It is defined by the contract test in tests/app/ports/store.contract.ts,
// async and narrow, so that another database can stand behind it. It knows rows, not rules: what a fact
// means is the core's.
import type { LotId, Recorded, TestId } from '../../core/facts.ts';
import type { Settings } from '../../core/kitchen.ts';
import type { Ledger } from '../../core/ledger.ts';
import type { Pool } from '../../core/pool.ts';
import type { Question } from '../../core/question.ts';
import type { Delivery } from './mailbox.ts';

export type KitchenId = string;

/** The read model of one test, for lists: a row a test, written when it opens, closes or changes afterwards. */
export interface TestRow {
  readonly id: TestId;
  readonly item: string;
  readonly status: 'open' | 'closed' | 'dropped';
  readonly openedAt: string;
  readonly closedAt?: string;
  /** Figures of a closed test as plain decimal figures: what a history shows. */
  readonly figures?: Readonly<Record<string, string>>;
}

/** The read model of one lot of ground meat: what is open, and which are the newest. */
export interface LotRow {
  readonly id: LotId;
  readonly status: 'open' | 'closed' | 'dropped';
  readonly openedAt: string;
}

/**
 * Everything that is computed from the facts and kept beside them. `rebuild` makes it anew. A store gives the rows in
 * the order of their ids, keys, items, and kinds with names (by code point); it takes them in any order.
 */
export interface Views {
  readonly tests: readonly TestRow[];
  readonly lots: readonly LotRow[];
  readonly memory: readonly (readonly [key: string, ledger: Ledger])[];
  readonly pools: readonly (readonly [item: string, pool: Pool])[];
  readonly names: readonly (readonly [kind: 'item' | 'part', name: string])[];
}

/** One message from start to end, stored in one transaction or not at all. */
export interface Turn {
  readonly kitchen: KitchenId;
  /** Unique in its kitchen: a second delivery of the same message is seen, not stored. */
  readonly message: string;
  readonly speaker: string;
  readonly at: string;
  readonly text: string;
  readonly outcome: string;
  readonly reply: string;
  readonly facts: readonly Recorded[];
  /** Only what changed. */
  readonly views: Views;
  /** The question that stands for this speaker afterwards; null clears it, undefined leaves it. */
  readonly question?: Question | null;
  /** The update that the message came by: it ends with the turn. Of a turn that was seen, without letters. */
  readonly delivery?: Delivery;
}

/** What a kitchen needs in memory to go on: everything but closed tests. */
export interface StoredKitchen {
  readonly settings: Settings;
  /** The facts of each open test, in the order of the log. */
  readonly openTests: readonly (readonly Recorded[])[];
  readonly lastTest: TestId;
  /** The facts of each open lot and of the newest lot. */
  readonly lots: readonly (readonly Recorded[])[];
  readonly lastLot: LotId;
  readonly memory: Views['memory'];
  readonly pools: Views['pools'];
  readonly names: Views['names'];
  readonly questions: readonly (readonly [speaker: string, question: Question])[];
}

/** The store's own trouble, classed for one plain sentence; anything else that is thrown is a bug. */
export type StoreFault =
  | 'damaged'
  | 'full'
  | 'readOnly'
  | 'newerVersion'
  | 'inUse'
  | 'notADatabase'
  | 'unavailable'
  /** A backup is not written over a file that is there. */
  | 'exists';

export class StoreError extends Error {
  readonly fault: StoreFault;
  readonly place: string;
  constructor(fault: StoreFault, place: string, options?: ErrorOptions) {
    super(`store: ${fault}: ${place}`, options);
    this.fault = fault;
    this.place = place;
  }
}

export interface Store {
  /** The kitchen, or undefined where none of that id was created. */
  load(kitchen: KitchenId): Promise<StoredKitchen | undefined>;
  /** Rejects where the kitchen is there already. */
  create(kitchen: KitchenId, settings: Settings): Promise<void>;
  /** Durable when it resolves, nothing stored when it rejects. `seen`: the message was stored before, nothing was changed. */
  append(turn: Turn): Promise<'stored' | 'seen'>;
  /** What was replied to a message that was seen before. */
  replyTo(kitchen: KitchenId, message: string): Promise<string | undefined>;
  testFacts(kitchen: KitchenId, test: TestId): Promise<readonly Recorded[]>;
  lotFacts(kitchen: KitchenId, lot: LotId): Promise<readonly Recorded[]>;
  /** The newest lots, by their numbers, newest first. */
  newestLots(kitchen: KitchenId, limit: number): Promise<readonly LotId[]>;
  /** Tests that were closed at an instant or later, newest first. */
  closedSince(kitchen: KitchenId, at: string, limit: number): Promise<readonly TestId[]>;
  /** The newest facts of a speaker, in the order of the log. */
  speakerFacts(kitchen: KitchenId, speaker: string, limit: number): Promise<readonly Recorded[]>;
  /** Closed tests of an item, newest first. */
  closedTests(kitchen: KitchenId, item: string, limit: number): Promise<readonly TestRow[]>;
  kitchens(): Promise<readonly KitchenId[]>;
  /** The whole log, in order. What is appended while it is read is read too. */
  facts(kitchen: KitchenId): AsyncIterable<Recorded>;
  views(kitchen: KitchenId): Promise<Views>;
  /** Puts these in the place of all that the kitchen has. */
  replaceViews(kitchen: KitchenId, views: Views): Promise<void>;
  close(): Promise<void>;
}

// The port to the figures of the running program: counts and times by fixed names. Nothing of people, kitchens or prices.

export type Count =
  | 'updatesReceived'
  | 'updatesHandled'
  | 'updatesParked'
  | 'repliesSent'
  | 'repliesFailed'
  | 'repliesUnknown'
  | 'pollsOk'
  | 'pollsFailed'
  | 'webhookTaken'
  | 'webhookRefused'
  | 'webhookForged'
  | 'storeFailures';

/** `turn`: one message read, decided and stored. `acknowledgement`: from an update that came in to its reply that arrived. */
export type Timing = 'turn' | 'acknowledgement';

/** Looked at when somebody asks. Undefined where there is nothing to tell. */
export interface Levels {
  readonly ready: boolean;
  readonly contactAge?: number;
  readonly oldestUnhandled?: number;
  readonly oldestUnsent?: number;
  readonly webhookWaiting?: number;
  /** Updates of people who are not of the team, since the beginning. */
  readonly strangers: number;
}

export interface Metrics {
  readonly count: (what: Count, by?: number) => void;
  readonly observe: (what: Timing, seconds: number) => void;
}

/** What a collector of figures reads. */
export interface Page {
  readonly type: string;
  readonly text: string;
}

export const UNMEASURED: Metrics = { count: () => undefined, observe: () => undefined };

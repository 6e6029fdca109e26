// What the kitchen is told without being asked, at its time: a reminder, an alarm, a summary. Whoever makes one is pure and says
// all that may be due, past or future; what has been told already is known by the key alone and is never told twice.
import type { LotId } from './facts.ts';
import type { Reply } from './reply.ts';
import type { Food } from './safety-facts.ts';

/** A member by name, with the team or not; or whoever watches the kitchen. */
export type Hearers = 'team' | { readonly speaker: string; readonly withTeam?: true };

export interface AskedReading {
  readonly stage: 'raw' | 'cook' | 'cooling';
  readonly lot?: LotId;
  /** As it was called, and what kind of food that is, where it is of no lot. */
  readonly what?: string;
  readonly food?: Food;
  /** ISO. */
  readonly since?: string;
}

export interface Due {
  /** One occurrence has one key for ever, whatever the clock shows: made of the number of the fact behind it, never of the time now. */
  readonly key: string;
  /** Milliseconds of UTC. Alarms of safety are elapsed time; reminders and summaries are local time, made UTC by the kitchen's zone. */
  readonly at: number;
  readonly to: Hearers;
  readonly say: readonly Reply[];
  /** Rings, stands until a person acknowledges it, and goes to a second person as well where nobody does. */
  readonly alarm: boolean;
  /** Who has heard it has so long to see to it: while its reason holds, it rings again after these minutes. Without them it is silent then. */
  readonly againMinutes?: number;
  /** Nobody hears it: from the third ring on it rings so often. Without them it waits longer each time. */
  readonly unheardMinutes?: number;
  /** The clock was ahead when that was noted which it follows, so its time is reckoned from now: who looks keeps the first. */
  readonly isAhead?: true;
  /** The reading that it asks for, and since when where it need not ring first: a bare number answers it. */
  readonly reading?: AskedReading;
  /** It does not ring again from then on; milliseconds of UTC. */
  readonly until?: number;
}

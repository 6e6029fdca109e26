// Whether the bot does its work: not whether it could, but when it last did.
import type { Backlog } from '../../app/ports/mailbox.ts';
import type { Levels } from '../../app/ports/metrics.ts';
import type { Contact } from './contact.ts';

/** Ages in seconds; null where there was none yet, or nothing waits. */
export interface Readiness {
  readonly ready: boolean;
  readonly secondsSincePoll?: number | null;
  readonly secondsSinceCheck?: number | null;
  /** At the service, where it brings them. */
  readonly waitingUpdates?: number;
  readonly deliveryFails?: boolean;
  readonly oldestUnhandledSeconds: number | null;
  readonly oldestUnsentSeconds: number | null;
}

/** A poll waits for up to 25 seconds and may be given up after 35. */
const LONGEST_SINCE_POLL = 90;
/** The webhook is looked at each minute. */
const LONGEST_SINCE_CHECK = 150;
const LONGEST_UNHANDLED = 60;
const LONGEST_UNSENT = 120;

export function readinessOf({ oldestUpdateAt, oldestLetterAt }: Backlog, contact: Contact): Readiness {
  const oldestUnhandledSeconds = ageOf(oldestUpdateAt && Date.parse(oldestUpdateAt));
  const oldestUnsentSeconds = ageOf(oldestLetterAt && Date.parse(oldestLetterAt));
  const { isMet, told } = meeting(contact, ageOf(contact.atMs));
  const ready =
    isMet &&
    (oldestUnhandledSeconds ?? 0) <= LONGEST_UNHANDLED &&
    (oldestUnsentSeconds ?? 0) <= LONGEST_UNSENT;
  return { ready, ...told, oldestUnhandledSeconds, oldestUnsentSeconds };
}

/** The same for who collects figures. */
export function levelsOf(backlog: Backlog, contact: Contact): Levels {
  const found = readinessOf(backlog, contact);
  const levels = {
    contactAge: found.secondsSincePoll ?? found.secondsSinceCheck,
    oldestUnhandled: found.oldestUnhandledSeconds,
    oldestUnsent: found.oldestUnsentSeconds,
    webhookWaiting: found.waitingUpdates,
  };
  const known = Object.fromEntries(Object.entries(levels).filter(([, level]) => level != null));
  return { ready: found.ready, strangers: backlog.strangers, ...known };
}

interface Meeting {
  readonly isMet: boolean;
  readonly told: Partial<Readiness>;
}

function meeting(contact: Contact, seconds: number | null): Meeting {
  switch (contact.is) {
    case 'poll':
      return { isMet: isWithin(seconds, LONGEST_SINCE_POLL), told: { secondsSincePoll: seconds } };
    case 'webhook': {
      const { waiting: waitingUpdates, isFailing: deliveryFails } = contact;
      const isMet = isWithin(seconds, LONGEST_SINCE_CHECK) && !deliveryFails;
      return { isMet, told: { secondsSinceCheck: seconds, waitingUpdates, deliveryFails } };
    }
  }
}

const isWithin = (seconds: number | null, longest: number): boolean => seconds !== null && seconds <= longest;

const ageOf = (atMs: number | '' | undefined): number | null =>
  typeof atMs === 'number' ? Math.max(0, Math.round((Date.now() - atMs) / 1000)) : null;

// Whether the bot does its work: not whether it could, but when it last did.
import type { Backlog } from '../../app/ports/mailbox.ts';

/** Ages in seconds; null where there was no poll yet, or nothing waits. */
export interface Readiness {
  readonly ready: boolean;
  readonly secondsSincePoll: number | null;
  readonly oldestUnhandledSeconds: number | null;
  readonly oldestUnsentSeconds: number | null;
}

/** A poll waits for up to 25 seconds and may be given up after 35. */
const LONGEST_SINCE_POLL = 90;
const LONGEST_UNHANDLED = 60;
const LONGEST_UNSENT = 120;

export function readinessOf(
  { oldestUpdateAt, oldestLetterAt }: Backlog,
  polledAtMs: number | undefined,
): Readiness {
  const secondsSincePoll = ageOf(polledAtMs);
  const oldestUnhandledSeconds = ageOf(oldestUpdateAt && Date.parse(oldestUpdateAt));
  const oldestUnsentSeconds = ageOf(oldestLetterAt && Date.parse(oldestLetterAt));
  const ready =
    secondsSincePoll !== null &&
    secondsSincePoll <= LONGEST_SINCE_POLL &&
    (oldestUnhandledSeconds ?? 0) <= LONGEST_UNHANDLED &&
    (oldestUnsentSeconds ?? 0) <= LONGEST_UNSENT;
  return { ready, secondsSincePoll, oldestUnhandledSeconds, oldestUnsentSeconds };
}

const ageOf = (atMs: number | '' | undefined): number | null =>
  typeof atMs === 'number' ? Math.max(0, Math.round((Date.now() - atMs) / 1000)) : null;

// How long to wait. Elapsed time only: what is due is looked at each second at the latest.
import { setTimeout as sleep } from 'node:timers/promises';

export interface Pace {
  /** The longest that one poll waits at the service. */
  readonly pollSeconds: number;
  /** When a call is given up; a poll, so much after its own time. */
  readonly callSeconds: number;
  readonly firstBackoffMs: number;
  readonly longestBackoffMs: number;
  /** How often the webhook is looked at. */
  readonly checkMs: number;
  /** A note that is heard for longer is shown to be heard, and again so often as the sign fades. */
  readonly hearingMs: number;
  readonly signMs: number;
  /** Of a note that is heard for longer it is said. */
  readonly slowMs: number;
}

export const PACE: Pace = {
  pollSeconds: 25,
  callSeconds: 10,
  firstBackoffMs: 500,
  longestBackoffMs: 30_000,
  checkMs: 60_000,
  hearingMs: 1000,
  signMs: 4000,
  slowMs: 10_000,
};

/** Doubles with each failure in a row; half of it by chance, so that not everybody comes back at once. */
export function backoffMs({ firstBackoffMs, longestBackoffMs }: Pace, failures: number): number {
  const full = Math.min(longestBackoffMs, firstBackoffMs * 2 ** Math.min(failures - 1, 20));
  return full * (0.5 + Math.random() / 2);
}

/** It changes while something waits: the type checker does not see that. */
export const isAborted = (signal: AbortSignal): boolean => signal.aborted;

/** Ends early, without an error, at the signal. */
export async function pause(milliseconds: number, signal: AbortSignal): Promise<void> {
  await sleep(milliseconds, undefined, { signal }).catch(() => undefined);
}

export interface Bell {
  readonly ring: () => void;
  /** Until it rings, has rung since the last wait, or the time is up. */
  readonly wait: (milliseconds: number) => Promise<void>;
}

export function newBell(): Bell {
  let hasRung = false;
  let wake = (): void => undefined;
  return {
    ring: () => {
      hasRung = true;
      wake();
    },
    wait: async (milliseconds) => {
      if (!hasRung) {
        const rung = new AbortController();
        wake = () => {
          rung.abort();
        };
        await pause(milliseconds, rung.signal);
      }
      hasRung = false;
    },
  };
}

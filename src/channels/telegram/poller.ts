// Brings updates in. Only what is stored is confirmed, by the next poll.
import type { Api } from 'grammy';
import type { Log } from '../../app/ports/log.ts';
import type { Mailbox } from '../../app/ports/mailbox.ts';
import { traceOf, troubleOf } from './calls.ts';
import { now } from './desk.ts';
import { ALLOWED_UPDATES } from './incoming.ts';
import { backoffMs, type Pace, pause } from './pace.ts';

export interface PollerParts {
  readonly api: Api;
  readonly bot: string;
  readonly post: Pick<Mailbox, 'receive'>;
  readonly pace: Pace;
  readonly log: Log;
  readonly signal: AbortSignal;
  readonly onPolled: () => void;
  readonly onStored: () => void;
}

/**
 * Polls until the signal. The offset is sent until one poll with it came back, then left out: what was confirmed stays so,
 * and an old offset can't hide updates whose numbering began anew after a quiet week. After a restart what was not
 * confirmed comes again and is known by its number.
 */
export async function poll(parts: PollerParts): Promise<void> {
  const { signal, log } = parts;
  let offset: number | undefined;
  let failures = 0;
  while (!signal.aborted) {
    try {
      offset = await pollOnce(parts, offset);
      failures = 0;
    } catch (error) {
      if (isAborted(signal)) return;
      failures += 1;
      log.warn({ ...traceOf(error), failures }, 'poll failed');
      await pause(waitMs(parts.pace, error, failures), signal);
    }
  }
}

/** It changes while a poll waits: the type checker does not see that. */
const isAborted = (signal: AbortSignal): boolean => signal.aborted;

/** What confirms what this poll brought. Rejects, with nothing confirmed, where the store could not take it. */
async function pollOnce(parts: PollerParts, offset: number | undefined): Promise<number | undefined> {
  const { api, bot, post, pace, signal } = parts;
  const updates = await api.getUpdates(
    {
      timeout: pace.pollSeconds,
      limit: 100,
      allowed_updates: ALLOWED_UPDATES,
      ...(offset === undefined ? {} : { offset }),
    },
    signal as Parameters<Api['getUpdates']>[1],
  );
  parts.onPolled();
  if (updates.length === 0) return undefined;
  const stored = updates.map((update) => ({ id: update.update_id, body: JSON.stringify(update) }));
  await post.receive(bot, stored, now());
  parts.onStored();
  return Math.max(...stored.map(({ id }) => id)) + 1;
}

function waitMs(pace: Pace, error: unknown, failures: number): number {
  const trouble = troubleOf(error);
  return trouble.is === 'tooMany' ? trouble.seconds * 1000 : backoffMs(pace, failures);
}

// Brings updates in. Only what is stored is confirmed, by the next poll.
import { type Api, GrammyError } from 'grammy';
import type { Log } from '../../app/ports/log.ts';
import type { Mailbox } from '../../app/ports/mailbox.ts';
import type { Metrics } from '../../app/ports/metrics.ts';
import { traceOf, waitMs } from './calls.ts';
import { now } from './desk.ts';
import { ALLOWED_UPDATES, asStored } from './incoming.ts';
import { isAborted, type Pace, pause } from './pace.ts';

export interface PollerParts {
  readonly api: Api;
  readonly bot: string;
  readonly post: Pick<Mailbox, 'receive'>;
  readonly pace: Pace;
  readonly log: Log;
  readonly metrics: Metrics;
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
      parts.metrics.count('pollsFailed');
      log.warn({ ...traceOf(error), failures }, 'poll failed');
      await clearTheWay(parts, error);
      await pause(waitMs(parts.pace, error, failures), signal);
    }
  }
}

/** The service says the same to a second poll and to a poll while a webhook is set. What waits is kept. */
async function clearTheWay({ api, log, signal }: PollerParts, error: unknown): Promise<void> {
  if (!(error instanceof GrammyError) || error.error_code !== 409) return;
  const isWebhook = /webhook/i.test(error.description);
  log.warn({}, isWebhook ? 'webhook is set, taking it away' : 'another program polls for this bot');
  if (!isWebhook) return;
  await api.deleteWebhook({}, signal as Parameters<Api['deleteWebhook']>[1]).catch(() => undefined);
}

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
  parts.metrics.count('pollsOk');
  parts.onPolled();
  if (updates.length === 0) return undefined;
  const stored = updates.map(asStored);
  await post.receive(bot, stored, now());
  parts.onStored();
  return Math.max(...stored.map(({ id }) => id)) + 1;
}

// Tells the service where to bring updates, and looks each minute whether it does.
import type { Api } from 'grammy';
import { GrammyError } from 'grammy';
import type { WebhookInfo } from 'grammy/types';
import type { Log } from '../../app/ports/log.ts';
import { traceOf, waitMs } from './calls.ts';
import type { ContactBook } from './contact.ts';
import { ALLOWED_UPDATES } from './incoming.ts';
import { backoffMs, isAborted, type Pace, pause } from './pace.ts';
import type { Webhook } from './webhook.ts';

export interface WatchParts {
  readonly api: Api;
  readonly webhook: Webhook;
  readonly contact: ContactBook;
  readonly pace: Pace;
  readonly log: Log;
  readonly signal: AbortSignal;
}

/** Until the signal. The webhook stays set then: what is said meanwhile waits at the service. */
export async function watchWebhook(parts: WatchParts): Promise<void> {
  const { signal, log, pace } = parts;
  let errorDate: number | undefined;
  let failures = 0;
  while (!signal.aborted) {
    try {
      if (errorDate === undefined) await set(parts);
      errorDate = await look(parts, errorDate);
      failures = errorDate === undefined ? failures + 1 : 0;
      await pause(errorDate === undefined ? backoffMs(pace, failures) : pace.checkMs, signal);
    } catch (error) {
      if (isAborted(signal)) return;
      failures += 1;
      log.warn({ ...traceOf(error), ...reasonOf(error), failures }, 'webhook not confirmed');
      await pause(waitMs(pace, error, failures), signal);
    }
  }
}

/** Why the service does not take the address, in its own words: it is of an address that is no secret. */
const reasonOf = (error: unknown): Readonly<Record<string, string>> =>
  error instanceof GrammyError && error.error_code === 400 ? { reason: error.description } : {};

/** One connection: over several, "no, 1.3" may overtake what it corrects. One is enough for the talk of a kitchen. */
async function set({ api, webhook: { url, secret }, log, signal }: WatchParts): Promise<void> {
  const how = { secret_token: secret, allowed_updates: ALLOWED_UPDATES, max_connections: 1 };
  await api.setWebhook(url, how, signal as Parameters<Api['setWebhook']>[2]);
  log.info({}, 'webhook set');
}

/** When the service last failed to reach us, 0 for never. Undefined where the webhook is not ours any more. */
async function look(parts: WatchParts, before: number | undefined): Promise<number | undefined> {
  const info = await parts.api.getWebhookInfo(parts.signal as Parameters<Api['getWebhookInfo']>[0]);
  if (info.url !== parts.webhook.url) {
    parts.log.warn({}, 'webhook was taken away');
    return undefined;
  }
  note(parts, before, info);
  return info.last_error_date ?? 0;
}

/** It fails from an error since the last look until nothing waits; the times of two clocks are not compared. */
function note({ contact, log }: WatchParts, before: number | undefined, info: WebhookInfo): void {
  const last = contact.read();
  const { pending_update_count: waiting, last_error_date: errorDate = 0 } = info;
  const isNew = before !== undefined && errorDate !== before;
  const isFailing = waiting > 0 && (isNew || (last.is === 'webhook' && last.isFailing));
  if (isFailing) log.warn({ waiting }, 'service can not bring updates');
  contact.write({ is: 'webhook', atMs: Date.now(), waiting, isFailing });
}

// Updates that the service brings. Each is stored before it is told so with 200; whatever else is answered, it comes again.
import { createHash, timingSafeEqual } from 'node:crypto';
import type { IncomingMessage, RequestListener, ServerResponse } from 'node:http';
import type { Update as Brought } from 'grammy/types';
import { z } from 'zod';
import type { Log } from '../../app/ports/log.ts';
import type { Mailbox, Update } from '../../app/ports/mailbox.ts';
import type { Metrics } from '../../app/ports/metrics.ts';
import { StoreError } from '../../app/ports/store.ts';
import { traceOf } from './calls.ts';
import { now } from './desk.ts';
import { asStored } from './incoming.ts';

export interface Webhook {
  /** With https, as the service is told it. */
  readonly url: string;
  readonly secret: string;
}

export interface WebhookParts {
  readonly webhook: Webhook;
  readonly bot: string;
  readonly post: Pick<Mailbox, 'receive'>;
  readonly log: Log;
  readonly metrics: Metrics;
  /** Nothing is taken after it. */
  readonly signal: AbortSignal;
  readonly onStored: () => void;
}

export interface Taking {
  readonly take: RequestListener;
  /** Resolves when nothing that was begun is still being stored. */
  readonly idle: () => Promise<unknown>;
}

/** The longest text with all that can hang on it is a small part of that. */
const LONGEST_BODY = 1024 * 1024;

const hasNumber = z.object({ update_id: z.int().nonnegative() });

export function newTaking(parts: WebhookParts): Taking {
  const isOurs = secretCheck(parts.webhook.secret);
  const { pathname } = new URL(parts.webhook.url);
  const under = new Set<Promise<void>>();
  const begin = (request: IncomingMessage, response: ServerResponse): void => {
    const taken = takeBody(parts, request, response);
    under.add(taken);
    void taken.finally(() => under.delete(taken));
  };
  return {
    take: (request, response) => {
      if (!isOurs(request)) {
        parts.metrics.count('webhookForged');
        return answer(response, 401);
      }
      if (request.url?.split('?')[0] !== pathname) return answer(response, 404);
      if (request.method !== 'POST') return answer(response, 405);
      begin(request, response);
    },
    idle: () => Promise.all(under),
  };
}

/** Compares hashes, which are of one length: neither content nor length of the secret shows in the time it takes. */
function secretCheck(secret: string): (request: IncomingMessage) => boolean {
  const digest = (text: string): Buffer => createHash('sha256').update(text).digest();
  const expected = digest(secret);
  return ({ headers }) =>
    timingSafeEqual(expected, digest(String(headers['x-telegram-bot-api-secret-token'] ?? '')));
}

/** With a refusal the connection goes: what else was on its way on it is not read. */
function answer(response: ServerResponse, status: number): void {
  response.writeHead(status, status === 200 ? {} : { connection: 'close' }).end();
}

async function takeBody(
  parts: WebhookParts,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  try {
    const body = await readBody(parts.signal, request);
    // Nothing can be told on a connection that is gone; the update comes again and is known.
    answer(response, body === undefined ? 413 : await statusOf(parts, body));
  } catch (error) {
    // Gone in the middle of the body, or too slow.
    parts.log.warn(traceOf(error), 'webhook request broken off');
    response.destroy();
  }
}

/** A body that is still on its way at the end is not waited for: what is not stored comes again. */
async function readBody(signal: AbortSignal, request: IncomingMessage): Promise<string | undefined> {
  const breakOff = (): void => void request.destroy();
  signal.addEventListener('abort', breakOff);
  try {
    return await bodyOf(request);
  } finally {
    signal.removeEventListener('abort', breakOff);
  }
}

/** Undefined where it is too long: nothing more of it is read then. */
async function bodyOf(request: IncomingMessage): Promise<string | undefined> {
  if (Number(request.headers['content-length'] ?? 0) > LONGEST_BODY) return undefined;
  const pieces: Buffer[] = [];
  let length = 0;
  // The answer still has to go out on the same connection.
  for await (const piece of request.iterator({ destroyOnReturn: false })) {
    const bytes = piece as Buffer;
    length += bytes.length;
    if (length > LONGEST_BODY) return undefined;
    pieces.push(bytes);
  }
  return Buffer.concat(pieces).toString('utf8');
}

function readNumber(body: string): Update | undefined {
  try {
    const read: unknown = JSON.parse(body);
    hasNumber.parse(read);
    return asStored(read as Brought);
  } catch {
    return undefined;
  }
}

async function statusOf(parts: WebhookParts, body: string): Promise<200 | 400 | 500 | 503> {
  const { bot, post, log, metrics, signal, onStored } = parts;
  const update = readNumber(body);
  metrics.count(update === undefined ? 'webhookRefused' : 'webhookTaken');
  if (update === undefined) return 400;
  if (signal.aborted) return 503;
  try {
    await post.receive(bot, [update], now());
  } catch (error) {
    log.error(error instanceof StoreError ? { fault: error.fault } : traceOf(error), 'store failed');
    return error instanceof StoreError ? 503 : 500;
  }
  onStored();
  return 200;
}

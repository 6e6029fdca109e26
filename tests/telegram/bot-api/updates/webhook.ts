// Updates by POST: one at a time for each chat, again until the bot answers with a 2xx.
import { setTimeout as pause } from 'node:timers/promises';
import type { Update } from 'grammy/types';
import { takesEffect, nextFault } from '../faults/faults.ts';
import { closeCall, openCall } from '../log.ts';
import { nowSeconds, type World } from '../world/world.ts';
import { chatOf, confirmOne } from './queue.ts';

export interface Target {
  readonly url: string;
  readonly secret: string | undefined;
  readonly maxConnections: number;
}

export interface Webhook extends Target {
  /** Chats with a delivery under way. */
  readonly lanes: Set<number>;
  readonly ended: AbortController;
  lastError?: { readonly date: number; readonly message: string };
}

/** Documented: a bot that does not answer is asked again; this is how long one attempt may take. */
const ATTEMPT_MS = 60_000;

/** Replaces a webhook that is there, and ends a poll that waits. */
export function startWebhook(world: World, target: Target): void {
  endWebhook(world);
  world.queue.endPoll?.('webhook');
  const webhook = { ...target, lanes: new Set<number>(), ended: new AbortController() };
  world.webhook = webhook;
  const look = (): void => {
    startLanes(world);
  };
  world.queue.watchers.add(look);
  webhook.ended.signal.addEventListener('abort', () => world.queue.watchers.delete(look));
  startLanes(world);
}

/** Begins to deliver in each chat that has something waiting, as far as connections are free. */
export function startLanes(world: World): void {
  const { webhook, queue } = world;
  if (webhook === undefined || world.isOut) return;
  for (const { update } of queue.waiting) {
    if (webhook.lanes.size >= webhook.maxConnections) return;
    const chat = chatOf(update);
    if (!webhook.lanes.has(chat)) void runLane(world, webhook, chat);
  }
}

export function endWebhook(world: World): void {
  world.webhook?.ended.abort();
  delete world.webhook;
}

async function runLane(world: World, webhook: Webhook, chat: number): Promise<void> {
  webhook.lanes.add(chat);
  let pauseMs = world.options.webhookRetryMs;
  for (let next = firstOf(world, chat); isOn(world, webhook) && next; next = firstOf(world, chat)) {
    if (await attempt(world, webhook, next)) {
      confirmOne(world.queue, next);
      pauseMs = world.options.webhookRetryMs;
    } else {
      await pause(pauseMs, undefined, { signal: webhook.ended.signal }).catch(() => undefined);
      pauseMs = Math.min(pauseMs * 2, world.options.webhookRetryMs * 20);
    }
  }
  webhook.lanes.delete(chat);
  if (isOn(world, webhook)) startLanes(world);
}

const isOn = (world: World, { ended }: Webhook): boolean => !ended.signal.aborted && !world.isOut;

const firstOf = (world: World, chat: number): Update | undefined =>
  world.queue.waiting.find(({ update }) => chatOf(update) === chat)?.update;

/** Logged like a call: it took effect where the bot said 2xx, whether or not that was heard. */
async function attempt(world: World, webhook: Webhook, update: Update): Promise<boolean> {
  const fault = nextFault(world.faults, 'webhook', chatOf(update));
  const call = openCall(world.log, { method: 'webhook', parameters: { ...update }, chat: chatOf(update) });
  const status = fault === undefined || takesEffect(fault) ? await postTo(webhook, update) : 0;
  if (status < 200 || status > 299) noteError(world, webhook, status);
  call.took = status >= 200 && status <= 299;
  closeCall(world.log, call, { kind: fault === undefined ? 'answered' : 'dropped', status });
  return call.took && fault === undefined;
}

/** 0 where there was no answer. */
async function postTo(webhook: Webhook, update: Update): Promise<number> {
  const headers = new Headers({ 'content-type': 'application/json' });
  if (webhook.secret !== undefined) headers.set('x-telegram-bot-api-secret-token', webhook.secret);
  try {
    const response = await fetch(webhook.url, {
      method: 'POST',
      redirect: 'manual',
      headers,
      body: JSON.stringify(update),
      signal: AbortSignal.any([webhook.ended.signal, AbortSignal.timeout(ATTEMPT_MS)]),
    });
    await response.arrayBuffer();
    return response.status;
  } catch {
    return 0;
  }
}

function noteError(world: World, webhook: Webhook, status: number): void {
  const message = status === 0 ? 'Connection refused' : `Wrong response from the webhook: ${String(status)}`;
  webhook.lastError = { date: nowSeconds(world), message };
}

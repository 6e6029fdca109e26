// getUpdates: one poll at a time, which waits until something is there or its time is up.
import type { Update } from 'grammy/types';
import { integer, list, type Params } from '../http/params.ts';
import { badRequest, conflict } from '../refusal.ts';
import type { World } from '../world/world.ts';
import { confirm, handOut, type Queue } from './queue.ts';

/** The service waits no longer, whatever is asked. */
const LONGEST_SECONDS = 50;

type End = 'updates' | 'time' | 'gone' | 'other poll' | 'webhook';

export async function getUpdates(
  world: World,
  params: Params,
  gone: AbortSignal,
): Promise<readonly Update[]> {
  const { queue } = world;
  if (world.webhook !== undefined)
    throw conflict(
      "can't use getUpdates method while webhook is active; use deleteWebhook to delete it first",
    );
  readAllowed(queue, params);
  queue.endPoll?.('other poll');
  const offset = integer(params, 'offset') ?? 0;
  if (offset !== 0) confirm(queue, offset);
  const seconds = Math.min(Math.max(integer(params, 'timeout') ?? 0, 0), LONGEST_SECONDS);
  const end = queue.waiting.length > 0 ? 'updates' : await pollEnd(queue, seconds, gone);
  return handedBecause(queue, end, limitOf(params));
}

/** A kind that was not asked for is not even made: updates from before the call stay. */
export function readAllowed(queue: Queue, params: Params): void {
  const allowed = list(params, 'allowed_updates');
  if (allowed !== undefined) queue.allowed = allowed.map(String);
}

function limitOf(params: Params): number {
  const limit = integer(params, 'limit') ?? 100;
  if (limit < 1) throw badRequest('limit must be positive');
  return Math.min(limit, 100);
}

function handedBecause(queue: Queue, end: End, limit: number): readonly Update[] {
  switch (end) {
    case 'other poll':
      throw conflict(
        'terminated by other getUpdates request; make sure that only one bot instance is running',
      );
    case 'webhook':
      throw conflict('terminated by setWebhook request');
    case 'gone':
      return [];
    case 'time':
    case 'updates':
      return handOut(queue, limit);
  }
}

function pollEnd(queue: Queue, seconds: number, gone: AbortSignal): Promise<End> {
  return new Promise((resolve) => {
    const finish = (end: End): void => {
      clearTimeout(timer);
      queue.watchers.delete(onUpdate);
      gone.removeEventListener('abort', onGone);
      if (queue.endPoll === finish) delete queue.endPoll;
      resolve(end);
    };
    const onUpdate = (): void => {
      if (queue.waiting.length > 0) finish('updates');
    };
    const onGone = (): void => {
      finish('gone');
    };
    const timer = setTimeout(finish, seconds * 1000, 'time');
    queue.watchers.add(onUpdate);
    gone.addEventListener('abort', onGone);
    queue.endPoll = finish;
    if (gone.aborted) onGone();
  });
}

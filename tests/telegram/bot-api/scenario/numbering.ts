// What a service may do to the order and the ids of updates.
import type { Update } from 'grammy/types';
import { dropAll, enqueue, repeat, repeatUnderNewId, type UpdateContent } from '../updates/queue.ts';
import type { World } from '../world/world.ts';

/** An update of any kind, for what the scenario has no words for. */
export const deliver = (world: World, content: UpdateContent): number | undefined =>
  enqueue(world.queue, content);

export const repeatUpdate = (world: World, updateId: number): number => repeat(world.queue, updateId);

/** One press, or message, under two ids. */
export const repeatUpdateUnderNewId = (world: World, updateId: number): number | undefined =>
  repeatUnderNewId(world.queue, updateId);

export function jumpUpdateIds(world: World, by: number): void {
  world.queue.nextId += by;
}

/** As after a week of silence: the numbering starts elsewhere, perhaps lower; what waited was dropped long ago. */
export function restartUpdateIds(world: World, next: number): void {
  dropAll(world.queue);
  world.queue.nextId = next;
}

/** Turns the order of all that waits, in each chat too. */
export function reverseWaiting({ queue }: World): void {
  queue.waiting.reverse();
}

export const waitingUpdates = ({ queue }: World): readonly Update[] =>
  queue.waiting.map(({ update }) => update);

export const madeUpdates = ({ queue }: World): readonly Update[] => queue.made;

/** Resolves when the bot has confirmed all that was made. */
export function awaitConfirmed({ queue }: World): Promise<void> {
  return new Promise((resolve) => {
    const look = (): void => {
      if (queue.waiting.length > 0) return;
      queue.watchers.delete(look);
      resolve();
    };
    queue.watchers.add(look);
    look();
  });
}

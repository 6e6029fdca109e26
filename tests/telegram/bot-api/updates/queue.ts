// Updates that wait for the bot: made, filtered by kind, handed out, confirmed by an offset.
import type { Update } from 'grammy/types';

export type UpdateContent = Omit<Update, 'update_id'>;

interface Waiting {
  readonly update: Update;
  /** Sent once more on purpose: an offset that passed it long ago confirms it only after it was handed out again. */
  readonly isRepeat: boolean;
  wasHanded: boolean;
}

export interface Queue {
  waiting: Waiting[];
  /** Every update that was ever made, confirmed or not. */
  readonly made: Update[];
  nextId: number;
  allowed: readonly string[];
  /** Told of each new update, and of each confirmation. */
  readonly watchers: Set<() => void>;
  /** Ends the poll that waits now. */
  endPoll?: (why: 'other poll' | 'webhook') => void;
}

/** Documented: these must be asked for by name. */
const UNASKED = ['chat_member', 'message_reaction', 'message_reaction_count'];
/** How far beyond the newest update an offset may lie and still be meant for this numbering. */
const FUTURE = 10;

export const newQueue = (firstUpdateId: number): Queue => ({
  waiting: [],
  made: [],
  nextId: firstUpdateId,
  allowed: [],
  watchers: new Set(),
});

/** Its id, or undefined where the bot has not asked for this kind. */
export function enqueue(queue: Queue, content: UpdateContent): number | undefined {
  if (!isAllowed(queue, content)) return undefined;
  const update: Update = { update_id: queue.nextId, ...content };
  queue.nextId += 1;
  queue.made.push(update);
  return waitFor(queue, update, false);
}

/** The same update again, as a service does that is unsure whether it arrived. */
export function repeat(queue: Queue, updateId: number): number {
  return waitFor(queue, madeUpdate(queue, updateId), true);
}

/** The same content under a new id. */
export function repeatUnderNewId(queue: Queue, updateId: number): number | undefined {
  const { update_id: _, ...content } = madeUpdate(queue, updateId);
  return enqueue(queue, content);
}

function madeUpdate(queue: Queue, updateId: number): Update {
  const update = queue.made.findLast(({ update_id }) => update_id === updateId);
  if (update === undefined) throw new Error(`no update ${String(updateId)} was made`);
  return update;
}

function waitFor(queue: Queue, update: Update, isRepeat: boolean): number {
  queue.waiting.push({ update, isRepeat, wasHanded: false });
  tell(queue);
  return update.update_id;
}

function isAllowed({ allowed }: Queue, content: UpdateContent): boolean {
  const [kind = ''] = Object.keys(content);
  return allowed.length === 0 ? !UNASKED.includes(kind) : allowed.includes(kind);
}

/**
 * Confirms all that is lower than the offset; a negative one keeps only that many of the last.
 * After a quiet week ids may start lower: an offset far beyond the newest belongs to the old numbering.
 */
export function confirm(queue: Queue, offset: number): void {
  if (offset < 0) queue.waiting = queue.waiting.slice(offset);
  else if (offset < queue.nextId + FUTURE)
    queue.waiting = queue.waiting.filter(
      ({ update, isRepeat, wasHanded }) => update.update_id >= offset || (isRepeat && !wasHanded),
    );
  tell(queue);
}

export function handOut(queue: Queue, limit: number): readonly Update[] {
  const handed = queue.waiting.slice(0, limit);
  for (const one of handed) one.wasHanded = true;
  return handed.map(({ update }) => update);
}

/** One update is done with, as a webhook confirms it. */
export function confirmOne(queue: Queue, update: Update): void {
  const at = queue.waiting.findIndex((one) => one.update === update);
  if (at >= 0) queue.waiting.splice(at, 1);
  tell(queue);
}

export function dropAll(queue: Queue): void {
  queue.waiting = [];
  tell(queue);
}

export function chatOf(update: Update): number {
  const message = update.message ?? update.edited_message ?? update.callback_query?.message;
  const chat = message?.chat ?? update.my_chat_member?.chat ?? update.chat_member?.chat;
  return chat?.id ?? 0;
}

const tell = (queue: Queue): void => {
  for (const watcher of [...queue.watchers]) watcher();
};

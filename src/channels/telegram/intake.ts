// Handles what was stored, one update after the other, of each chat in the order of arrival. What fails three times is put
// aside and blocks nobody. A trouble of the store drops nothing: it is waited for. A voice note takes seconds to hear: its chat
// waits for it, the others go on.
import { setImmediate as giveWay } from 'node:timers/promises';
import type { StoredUpdate } from '../../app/ports/mailbox.ts';
import { StoreError } from '../../app/ports/store.ts';
import { traceOf } from './calls.ts';
import type { Desk } from './desk.ts';
import { handle, park } from './handle.ts';
import { takesTime } from './incoming.ts';
import { backoffMs, type Bell, type Pace, pause } from './pace.ts';

export interface IntakeParts {
  readonly desk: Desk;
  readonly pace: Pace;
  readonly signal: AbortSignal;
  /** Rung when something was stored. */
  readonly bell: Bell;
  readonly onHandled: () => void;
}

const MOST_FAILURES = 3;
const PAGE = 50;
const LOOK_AGAIN_MS = 1000;

/** The chats whose voice notes are being heard. */
type Busy = Map<number, Promise<void>>;

export async function takeIn(parts: IntakeParts): Promise<void> {
  const { desk, signal, bell } = parts;
  const busy: Busy = new Map();
  let failures = 0;
  let suspect = true;
  while (!signal.aborted) {
    try {
      const page = await desk.post.unhandled(desk.bot, PAGE);
      const free = page.filter(({ chat }) => !busy.has(chat));
      if (free.length === 0) await bell.wait(LOOK_AGAIN_MS);
      else await handlePage(parts, free, { suspect, busy });
      suspect &&= free.length === 0;
      failures = 0;
    } catch (error) {
      failures += 1;
      await outlast(parts, error, failures);
    }
  }
  await Promise.all(busy.values());
}

async function outlast({ desk, pace, signal }: IntakeParts, error: unknown, failures: number): Promise<void> {
  if (!(error instanceof StoreError)) throw error;
  desk.log.error({ fault: error.fault, failures }, 'store failed');
  await pause(backoffMs(pace, failures), signal);
}

/** The first update after a start may be the one that ended the process before: it is counted before it is handled. */
async function handlePage(
  parts: IntakeParts,
  page: readonly StoredUpdate[],
  { suspect, busy }: { suspect: boolean; busy: Busy },
): Promise<void> {
  const { desk, signal, onHandled } = parts;
  // What came after a voice note waits for the next page, however soon the note was heard: it may have to be heard again first.
  const aside = new Set<number>();
  for (const [index, update] of page.entries()) {
    if (signal.aborted) return;
    if (aside.has(update.chat)) continue;
    const isSuspect = suspect && index === 0;
    if (isSuspect) await desk.post.noteFailure(desk.bot, update.id);
    if (takesTime(update)) {
      aside.add(update.chat);
      hearAside(parts, update, { busy, isSuspect });
      continue;
    }
    const isEnded = await handleOrCount(desk, update, isSuspect);
    // Tried again at once, before what came after it.
    if (!isEnded) return;
    onHandled();
    // A store that answers at once gives way to nothing: polls, sends and the signal to stop must have their turn.
    await giveWay();
  }
}

function hearAside(
  parts: IntakeParts,
  update: StoredUpdate,
  { busy, isSuspect }: { busy: Busy; isSuspect: boolean },
): void {
  const { desk, bell, pace, signal, onHandled } = parts;
  const hearing = handleOrCount(desk, update, isSuspect)
    .catch((error: unknown) => outlast(parts, error, 1))
    .then(async (isEnded) => {
      // The service may not give the note just now.
      if (isEnded === false) await pause(backoffMs(pace, update.failures + 1), signal);
    })
    .finally(() => {
      busy.delete(update.chat);
      onHandled();
      bell.ring();
    });
  busy.set(update.chat, hearing);
}

async function handleOrCount(desk: Desk, update: StoredUpdate, isCounted: boolean): Promise<boolean> {
  if (update.failures >= MOST_FAILURES) {
    await park(desk, update);
    return true;
  }
  try {
    await handle(desk, update);
    return true;
  } catch (error) {
    if (error instanceof StoreError) throw error;
    desk.log.error({ ...traceOf(error), update: update.id }, 'handling failed');
    if (!isCounted) await desk.post.noteFailure(desk.bot, update.id);
    return false;
  }
}

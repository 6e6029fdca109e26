// Empties the outbox: each chat in order, several chats at once. A message that may have arrived is never sent again; the
// next one to that chat says so.
import type { Api } from 'grammy';
import type { Log } from '../../app/ports/log.ts';
import type { Letter, LetterEnd, LetterKind, Mailbox, NewLetter, Notices } from '../../app/ports/mailbox.ts';
import type { SpeakNote } from '../../app/ports/speech.ts';
import type { Team } from '../../app/ports/team.ts';
import { StoreError } from '../../app/ports/store.ts';
import { sendLetter, traceOf, type Trouble, troubleOf } from './calls.ts';
import { asSound } from './voice-letter.ts';
import { backoffMs, type Bell, type Pace, pause } from './pace.ts';

export interface SenderParts {
  readonly api: Api;
  readonly bot: string;
  readonly post: Mailbox & Pick<Team, 'moveGroup'>;
  readonly pace: Pace;
  readonly log: Log;
  /** Rung when there may be letters. */
  readonly bell: Bell;
  /** No new letter is begun after it. */
  readonly signal: AbortSignal;
  readonly notices: Notices;
  /** Reads words out; where it is absent, or fails, they stand in the chat alone. */
  readonly speak?: SpeakNote;
  /** Told to the owners once of a chat that can't be written to. */
  readonly tellOwners: (chat: number) => Promise<readonly NewLetter[]>;
}

interface State {
  readonly lanes: Map<number, Promise<void>>;
  /** Chats that the service told to wait, until when by our clock. */
  readonly held: Map<number, number>;
  /** Failures in a row of the service, not of a chat. */
  failures: number;
  isTroubled: boolean;
}

const MOST_LANES = 16;
const LOOK_AGAIN_MS = 1000;

/** Until the signal, and then until what is on its way has ended. */
export async function send(parts: SenderParts): Promise<void> {
  const state: State = { lanes: new Map(), held: new Map(), failures: 0, isTroubled: false };
  while (!parts.signal.aborted) {
    try {
      if (state.isTroubled) await outwait(parts, state);
      else await startLanes(parts, state);
    } catch (error) {
      await outlastStore(parts, error);
    }
    if (!state.isTroubled) await parts.bell.wait(LOOK_AGAIN_MS);
  }
  await Promise.all(state.lanes.values());
}

async function outlastStore({ log, pace, signal }: SenderParts, error: unknown): Promise<void> {
  if (!(error instanceof StoreError)) throw error;
  log.error({ fault: error.fault }, 'store failed');
  await pause(pace.firstBackoffMs, signal);
}

/** Waits, and then for a harmless call to go well: each message that is tried in vain may be one that nobody reads. */
async function outwait({ api, pace, signal, log }: SenderParts, state: State): Promise<void> {
  await Promise.all(state.lanes.values());
  await pause(backoffMs(pace, state.failures), signal);
  try {
    await api.getMe();
    state.isTroubled = false;
  } catch (error) {
    state.failures += 1;
    log.warn({ ...traceOf(error), failures: state.failures }, 'service not there');
  }
}

async function startLanes(parts: SenderParts, state: State): Promise<void> {
  for (const chat of await parts.post.chatsWithLetters(parts.bot)) {
    if (state.lanes.size >= MOST_LANES) return;
    if (state.lanes.has(chat) || isHeld(state, chat)) continue;
    const lane = emptyChat(parts, state, chat)
      .catch((error: unknown) => outlastStore(parts, error))
      .finally(() => {
        state.lanes.delete(chat);
        // Another chat may have waited for the lane.
        if (!isHeld(state, chat)) parts.bell.ring();
      });
    state.lanes.set(chat, lane);
  }
}

function isHeld({ held }: State, chat: number): boolean {
  const until = held.get(chat);
  if (until === undefined || until > Date.now()) return until !== undefined;
  held.delete(chat);
  return false;
}

async function emptyChat(parts: SenderParts, state: State, chat: number): Promise<void> {
  const { post, bot, notices } = parts;
  while (mayBegin(parts, state) && !isHeld(state, chat)) {
    let letter = await post.takeLetter(bot, chat, notices);
    if (letter === undefined) return;
    while (letter !== undefined) letter = await carry(parts, state, letter);
  }
}

const mayBegin = ({ signal }: SenderParts, { isTroubled }: State): boolean => !signal.aborted && !isTroubled;

/** Sends it. Where it arrived, the next of the chat is taken as this one ends: a commit for both. */
async function carry(parts: SenderParts, state: State, given: Letter): Promise<Letter | undefined> {
  const letter = given.kind === 'voice' ? await asSound(parts, given) : given;
  if (letter === undefined) return arrived(parts, state, given);
  let message: number | undefined;
  try {
    message = await sendLetter(parts.api, letter);
  } catch (error) {
    const trouble = troubleOf(error);
    parts.log.warn({ ...traceOf(error), trouble: trouble.is }, 'send failed');
    await settle(parts, state, { letter, trouble });
    return undefined;
  }
  state.failures = 0;
  return arrived(parts, state, letter, message);
}

const arrived = (
  parts: SenderParts,
  state: State,
  { seq }: Letter,
  message?: number,
): Promise<Letter | undefined> =>
  untilStored(parts, () =>
    parts.post.endLetter(seq, 'sent', {
      ...(message === undefined ? {} : { message }),
      ...(mayBegin(parts, state) ? { next: parts.notices } : {}),
    }),
  );

async function settle(
  parts: SenderParts,
  state: State,
  { letter, trouble }: { letter: Letter; trouble: Trouble },
): Promise<void> {
  const end = async (how: LetterEnd): Promise<void> => {
    await untilStored(parts, () => parts.post.endLetter(letter.seq, how));
  };
  switch (trouble.is) {
    case 'tooMany':
      state.held.set(letter.chat, Date.now() + trouble.seconds * 1000);
      return end('again');
    case 'done':
      return end('sent');
    case 'gone':
      return end(letter.kind === 'card' ? 'gone' : 'sent');
    case 'moved':
      return untilStored(parts, async () => {
        await parts.post.endLetter(letter.seq, 'again');
        await parts.post.moveGroup(parts.bot, letter.chat, trouble.to);
      });
    case 'impossible':
      // A sign, a toast or a voice that can't be shown is no loss: what was said stands.
      if (BESIDE.includes(letter.kind)) return end('sent');
      return untilStored(parts, async () => {
        await parts.post.endLetter(letter.seq, 'failed', { tell: await parts.tellOwners(letter.chat) });
      });
    case 'unreached':
    case 'refusedToken':
      noteTrouble(state);
      return end('again');
    case 'unknown':
      noteTrouble(state);
      return end('unknown');
  }
}

const BESIDE: readonly LetterKind[] = ['voice', 'reaction', 'toast', 'bare', 'leave'];

function noteTrouble(state: State): void {
  if (!state.isTroubled) state.failures += 1;
  state.isTroubled = true;
}

/** What became of a letter must not be forgotten because the store could not take it at once. */
async function untilStored<Result>(
  parts: SenderParts,
  store: () => Promise<Result>,
): Promise<Result | undefined> {
  for (;;) {
    try {
      return await store();
    } catch (error) {
      await outlastStore(parts, error);
      if (parts.signal.aborted) return undefined;
    }
  }
}

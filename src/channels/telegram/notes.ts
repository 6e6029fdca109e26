// A voice note or an audio file: fetched, heard, and then taken like what is typed. While it takes long that is shown, and once said.
import type { Hearing } from '../../app/ports/hearing.ts';
import type { SpeechFault } from '../../app/ports/speech.ts';
import type { Membership } from '../../app/ports/team.ts';
import { wantsVoice } from '../../core/heard-out.ts';
import { say } from '../../core/reply.ts';
import { traceOf } from './calls.ts';
import { readersOf } from './answered.ts';
import { compose } from './compose.ts';
import { type Desk, done, letters, now } from './desk.ts';
import type { Personal } from './incoming.ts';
import { pause } from './pace.ts';
import { peopleOf, speakerOf, tableOf, testOf } from './turns.ts';

interface Noted {
  readonly incoming: Personal & { is: 'voice' };
  readonly member: Membership;
}

/** More than a minute of speech has; what is larger is not fetched. */
const MOST_BYTES = 6_000_000;
/** A little more than is heard: the service rounds. */
const MOST_SECONDS = 61;

export async function takeNote(desk: Desk, update: number, noted: Noted): Promise<void> {
  const { incoming, member } = noted;
  const { chat, message, person, at } = incoming;
  const hearing = await showingThat(desk, { update, noted }, () => heard(desk, noted));
  if (hearing.is !== 'words') return answerUnheard(desk, update, { ...noted, hearing });
  const about = await testOf(desk, incoming, member);
  await tableOf(desk, member).take({
    id: `${chat}:${message}`,
    ...{ speaker: speakerOf(person), at, text: hearing.text, heard: hearing.heard },
    ...{ role: member.role, readBy: readersOf(incoming, member), people: await peopleOf(desk, member) },
    ...(about === undefined ? {} : { about }),
    deliver: (answer) => compose({ desk, update, incoming, member, answer }),
  });
}

async function heard(desk: Desk, { incoming, member }: Noted): Promise<Hearing> {
  const hear = desk.ears.get(member.kitchen);
  if (hear === undefined) return trouble('off');
  if (incoming.bytes > MOST_BYTES) return trouble('tooLarge');
  if (incoming.seconds > MOST_SECONDS) return trouble('tooLong');
  const bytes = await desk.download(incoming.file);
  if (bytes === undefined) return { ...trouble('unavailable'), reply: say('telegram-note-gone') };
  const hearing = await hear(bytes, speakerOf(incoming.person));
  if (hearing.is === 'words' || (hearing.is === 'nothing' && isForUs(incoming)))
    await keep(desk, { incoming, member, bytes });
  return hearing;
}

const trouble = (fault: SpeechFault): Hearing & { is: 'trouble' } => ({
  ...{ is: 'trouble', fault },
  reply: say(`speech-${fault}`),
});

/** In a group people talk with each other too. */
const isForUs = ({ isGroup, isAddressed }: Personal): boolean => !isGroup || isAddressed;

/** A note that can't be kept is answered all the same. */
async function keep(
  { keep, log }: Desk,
  { incoming, member, bytes }: Noted & { readonly bytes: Uint8Array },
): Promise<void> {
  const { chat, message, at } = incoming;
  try {
    await keep?.({ kitchen: member.kitchen, id: `${chat}_${message}`, at, bytes });
  } catch (error) {
    log.error(traceOf(error), 'note not kept');
  }
}

interface Slow {
  readonly update: number;
  readonly noted: Noted;
}

/** The sign is the service's own and fades: it can't be left behind by a crash. The sentence is posted once for ever. */
async function showingThat<Result>(
  desk: Desk,
  { update, noted: { incoming } }: Slow,
  work: () => Promise<Result>,
): Promise<Result> {
  if (!isForUs(incoming)) return work();
  const over = new AbortController();
  const shown = Promise.all([
    showSign(desk, incoming.chat, over.signal),
    saySlow(desk, { update, chat: incoming.chat }, over.signal),
  ]).catch((error: unknown) => {
    desk.log.warn(traceOf(error), 'hearing not shown');
  });
  try {
    return await work();
  } finally {
    over.abort();
    await shown;
  }
}

async function showSign({ pace, showHearing }: Desk, chat: number, signal: AbortSignal): Promise<void> {
  await pause(pace.hearingMs, signal);
  while (!signal.aborted) {
    // Not waited for: the answer must not wait for the sign.
    void showHearing(chat);
    await pause(pace.signMs, signal);
  }
}

async function saySlow(
  desk: Desk,
  { update, chat }: { readonly update: number; readonly chat: number },
  signal: AbortSignal,
): Promise<void> {
  await pause(desk.pace.slowMs, signal);
  if (signal.aborted) return;
  await desk.post.interject(desk.bot, update, letters(chat, desk.words(say('telegram-hearing-slow'))), now());
}

interface Unheard extends Noted {
  readonly hearing: Exclude<Hearing, { is: 'words' }>;
}

/** What can't have been an entry to us. Of anything else somebody may wait for the answer. */
const NO_ENTRY: readonly SpeechFault[] = ['off', 'tooLarge', 'tooLong', 'empty', 'wrongType'];

async function answerUnheard(
  desk: Desk,
  update: number,
  { incoming, member, hearing }: Unheard,
): Promise<void> {
  const { chat, person, isGroup } = incoming;
  const isNoEntry = hearing.is === 'nothing' || NO_ENTRY.includes(hearing.fault);
  if (isNoEntry && !isForUs(incoming)) return desk.post.settle(done(desk, update, []));
  const text = desk.words(hearing.reply);
  const isHeardOut = !isGroup && wantsVoice(tableOf(desk, member).kitchen().memory, speakerOf(person), true);
  const aloud = isHeardOut ? [{ chat, kind: 'voice', text } as const] : [];
  return desk.post.settle(done(desk, update, [...letters(chat, text), ...aloud]));
}

// One update from start to end. It ends in one transaction: with the facts of its turn, or by itself.
import type { Update } from 'grammy/types';
import type { StoredUpdate } from '../../app/ports/mailbox.ts';
import type { Answer } from '../../app/ports/table.ts';
import type { Member } from '../../app/ports/team.ts';
import { say } from '../../core/reply.ts';
import { type Desk, done, letters, now } from './desk.ts';
import { type Incoming, type Personal, readUpdate } from './incoming.ts';
import { fulfil } from './team.ts';
import { greetStranger, leaveGroup } from './strangers.ts';

type Text = Extract<Incoming, { is: 'text' }>;

/** More than anybody says in one breath; what is longer is not cut but refused. */
const LONGEST_TEXT = 1000;

export async function handle(desk: Desk, update: StoredUpdate): Promise<void> {
  const incoming = readUpdate(JSON.parse(update.body) as Update);
  switch (incoming.is) {
    case 'nothing':
      return desk.post.settle(done(desk, update.id, []));
    case 'group':
      return leaveGroup(desk, update.id, incoming.chat);
    case 'text':
    case 'voice':
    case 'edited':
    case 'secondhand':
    case 'unread':
      return handlePersonal(desk, update.id, incoming);
  }
}

async function handlePersonal(desk: Desk, update: number, incoming: Personal): Promise<void> {
  const member = await desk.post.member(desk.kitchen, incoming.person);
  if (member === undefined) return greetStranger(desk, update, incoming);
  const budget = desk.members.take(incoming.person, Date.parse(incoming.at));
  switch (budget) {
    case 'spent':
      return answer(desk, update, incoming.chat, 'telegram-too-fast');
    case 'out':
      return desk.post.settle(done(desk, update, []));
    case 'allowed':
      return handleMember(desk, update, { incoming, member });
  }
}

interface Heard {
  readonly incoming: Personal;
  readonly member: Member;
}

const NO_ENTRY: Readonly<Record<Exclude<Personal['is'], 'text'>, string>> = {
  voice: 'telegram-voice',
  edited: 'telegram-edited',
  secondhand: 'telegram-secondhand',
  unread: 'telegram-unread',
};

async function handleMember(desk: Desk, update: number, { incoming, member }: Heard): Promise<void> {
  if (incoming.is !== 'text') return answer(desk, update, incoming.chat, NO_ENTRY[incoming.is]);
  if (incoming.text.length > LONGEST_TEXT) return answer(desk, update, incoming.chat, 'telegram-too-long');
  if (/^\/start\b/.test(incoming.text)) return answer(desk, update, incoming.chat, 'telegram-welcome');
  const line = asLine(incoming.text);
  const settled = await fulfil(desk, update, { ...incoming, member, line });
  if (!settled) await takeTurn(desk, update, { incoming: { ...incoming, text: line }, member });
}

const answer = (desk: Desk, update: number, chat: number, id: string): Promise<void> =>
  desk.post.settle(done(desk, update, letters(chat, desk.words(say(id)))));

/** A command is the word itself. */
const asLine = (text: string): string => text.replace(/^\/(\w+)(@\w+)?/, '$1');

async function takeTurn(
  desk: Desk,
  update: number,
  { incoming, member }: { incoming: Text; member: Member },
): Promise<void> {
  const { chat, message, person, at, text } = incoming;
  await desk.table.take({
    id: `${chat}:${message}`,
    speaker: `telegram:${person}`,
    at,
    text,
    role: member.role,
    deliver: (answered) => done(desk, update, letters(chat, wordsOf(desk, answered))),
  });
}

/** In a chat of two nothing is meant for anybody else: silence would be no answer. */
function wordsOf(desk: Desk, { outcome, reply }: Answer): string {
  if (outcome === 'ignored') return desk.words(say('not-for-me'));
  return reply === '' ? desk.words(say('telegram-noted')) : reply;
}

/** What cannot be handled is put aside, and the person told. */
export async function park(desk: Desk, update: StoredUpdate): Promise<void> {
  desk.log.error({ update: update.id, failures: update.failures }, 'update parked');
  const member = await writerOf(desk, update);
  const told = member === undefined ? [] : letters(member.person, desk.words(say('telegram-parked')));
  await desk.post.settle({ ...done(desk, update.id, told), end: 'parked', at: now() });
}

/** The member whose update it is, where it can be read that far. */
async function writerOf(desk: Desk, { body }: StoredUpdate): Promise<Member | undefined> {
  try {
    const incoming = readUpdate(JSON.parse(body) as Update);
    return 'person' in incoming ? await desk.post.member(desk.kitchen, incoming.person) : undefined;
  } catch {
    return undefined;
  }
}

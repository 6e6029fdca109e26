// Who is not of the team: one fixed line, seldom, and nothing kept but a count. With the code of an invite they join.
import { createHash } from 'node:crypto';
import type { NewLetter } from '../../app/ports/mailbox.ts';
import type { Invite, Member } from '../../app/ports/team.ts';
import { name, say } from '../../core/reply.ts';
import { type Desk, done, letters, now } from './desk.ts';
import type { Personal } from './incoming.ts';

export const hashOf = (code: string): string => createHash('sha256').update(code).digest('hex');

export async function greetStranger(desk: Desk, update: number, incoming: Personal): Promise<void> {
  const invite = await inviteOf(desk, incoming);
  if (invite !== undefined) return join(desk, update, { incoming, invite });
  const line = desk.words(say('telegram-stranger'));
  const told = mayAnswer(desk, incoming.chat) ? fleeting(letters(incoming.chat, line)) : [];
  await desk.post.settle(done(desk, update, told, { fromStranger: true }));
}

/** For now the bot talks with each person alone. */
export async function leaveGroup(desk: Desk, update: number, chat: number): Promise<void> {
  const leave: NewLetter = { chat, kind: 'leave', text: '' };
  const told = mayAnswer(desk, chat) ? [...letters(chat, desk.words(say('telegram-group'))), leave] : [];
  await desk.post.settle(done(desk, update, fleeting(told), { fromStranger: true }));
}

/** By our own clock: it is our answers that are counted. */
const mayAnswer = ({ strangers }: Desk, chat: number): boolean =>
  strangers.take(chat, Date.now()) === 'allowed';

const fleeting = (posted: readonly NewLetter[]): readonly NewLetter[] =>
  posted.map((letter) => ({ ...letter, fleeting: true }));

async function inviteOf({ post, kitchen }: Desk, incoming: Personal): Promise<Invite | undefined> {
  const code = incoming.is === 'text' ? /^\/start ([\w-]{16,64})$/.exec(incoming.text)?.[1] : undefined;
  return code === undefined ? undefined : post.invite(kitchen, hashOf(code), now());
}

interface Joining {
  readonly incoming: Personal;
  readonly invite: Invite;
}

async function join(desk: Desk, update: number, { incoming, invite }: Joining): Promise<void> {
  const { kitchen, post, words } = desk;
  const taken = (await post.members(kitchen)).map((other) => other.name.toLowerCase());
  const { person, chat } = incoming;
  const member: Member = { person, name: freeName(incoming.name, taken), role: invite.role };
  const welcome = words(say('telegram-joined', { name: name(member.name), role: member.role }));
  const change = { is: 'joined', kitchen, member, invite: invite.hash } as const;
  await post.settle(done(desk, update, letters(chat, welcome), { change }));
  desk.log.info({ role: member.role }, 'member joined');
}

/** A second Tobin is "Tobin 2", so that a name says who is meant. */
function freeName(wanted: string, taken: readonly string[]): string {
  for (let count = 1; ; count += 1) {
    const free = count === 1 ? wanted : `${wanted} ${count}`;
    if (!taken.includes(free.toLowerCase())) return free;
  }
}

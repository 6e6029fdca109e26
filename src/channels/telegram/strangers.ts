// Who is not of the team: one fixed line, seldom, and nothing kept but a count. With the code of an invite they join.
import { createHash } from 'node:crypto';
import type { NewLetter } from '../../app/ports/mailbox.ts';
import type { Invite, Member, Membership } from '../../app/ports/team.ts';
import type { KitchenId } from '../../app/ports/store.ts';
import { name, say } from '../../core/reply.ts';
import { type Desk, done, letters, now } from './desk.ts';
import type { Personal } from './incoming.ts';

export const hashOf = (code: string): string => createHash('sha256').update(code).digest('hex');

/** In a group the others talk among themselves. */
export async function greetStranger(desk: Desk, update: number, incoming: Personal): Promise<void> {
  const invite = await inviteOf(desk, incoming);
  if (invite !== undefined) return join(desk, update, { incoming, invite });
  const { chat, isGroup } = incoming;
  const line = desk.words(say('telegram-stranger'));
  await desk.post.settle(done(desk, update, fleeting(told()), { fromStranger: true }));

  function told(): readonly NewLetter[] {
    if (incoming.is === 'press') return [{ chat, kind: 'toast', press: incoming.press, text: line }];
    return !isGroup && mayAnswer(desk, chat) ? letters(chat, line) : [];
  }
}

/** By our own clock: it is our answers that are counted. */
export const mayAnswer = ({ strangers }: Desk, chat: number): boolean =>
  strangers.take(chat, Date.now()) === 'allowed';

export const fleeting = (posted: readonly NewLetter[]): readonly NewLetter[] =>
  posted.map((letter) => ({ ...letter, fleeting: true }));

type Opened = Invite & { readonly kitchen: KitchenId };

/** Said alone: in a group everybody would read the code. */
async function inviteOf({ post }: Desk, incoming: Personal): Promise<Opened | undefined> {
  if (incoming.is !== 'text' || incoming.isGroup) return undefined;
  const code = /^\/start ([\w-]{16,64})$/.exec(incoming.text)?.[1];
  return code === undefined ? undefined : post.invite(hashOf(code), now());
}

/** A member who follows a link: of this kitchen already, or of another one. */
export async function answerStart(
  desk: Desk,
  update: number,
  { incoming, member }: { incoming: Personal; member: Membership },
): Promise<void> {
  const invite = await inviteOf(desk, incoming);
  const isElsewhere = invite !== undefined && invite.kitchen !== member.kitchen;
  const words = desk.words(say(isElsewhere ? 'telegram-elsewhere' : 'telegram-welcome'));
  await desk.post.settle(done(desk, update, letters(incoming.chat, words)));
}

interface Joining {
  readonly incoming: Personal;
  readonly invite: Opened;
}

async function join(desk: Desk, update: number, { incoming, invite }: Joining): Promise<void> {
  const { post, words } = desk;
  const { kitchen } = invite;
  const { person, chat } = incoming;
  const member: Member = { person, name: await freeName(desk, kitchen, incoming.name), role: invite.role };
  const welcome = words(say('telegram-joined', { name: name(member.name), role: member.role }));
  const change = { is: 'joined', kitchen, member, invite: invite.hash } as const;
  await post.settle(done(desk, update, letters(chat, welcome), { change }));
  desk.log.info({ role: member.role }, 'member joined');
}

/** Whom the settings name is known by a number until they say something. */
export async function nameMember(desk: Desk, member: Membership, said: string): Promise<Membership> {
  const { kitchen, person } = member;
  if (member.name !== String(person) || said === member.name) return member;
  const named = await freeName(desk, kitchen, said);
  await desk.post.rename(kitchen, { person, name: named });
  return { ...member, name: named };
}

/** A second Tobin is "Tobin 2", so that a name says who is meant. */
async function freeName({ post }: Desk, kitchen: KitchenId, wanted: string): Promise<string> {
  const taken = (await post.members(kitchen)).map((other) => other.name.toLowerCase());
  for (let count = 1; ; count += 1) {
    const free = count === 1 ? wanted : `${wanted} ${count}`;
    if (!taken.includes(free.toLowerCase())) return free;
  }
}

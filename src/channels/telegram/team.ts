// Who may do what, and the two wishes about the team: to invite somebody and to remove somebody.
import { randomBytes } from 'node:crypto';
import type { Invite, Member, Membership } from '../../app/ports/team.ts';
import type { Role } from '../../core/role.ts';
import { name, type Reply, say } from '../../core/reply.ts';
import { type Desk, done, letters, type TeamWish } from './desk.ts';
import { hashOf } from './strangers.ts';
import { speakerOf, tableOf } from './turns.ts';

/** Whom a role may bring in or send away. */
const RULES_OVER: Readonly<Record<Role, readonly Role[]>> = {
  owner: ['owner', 'lead', 'cutter'],
  lead: ['lead', 'cutter'],
  cutter: [],
};

const INVITE_HOURS = 24;

/** The code is told once; only its hash is kept. */
export function newInvite(role: Role): { readonly code: string; readonly invite: Invite } {
  const code = randomBytes(24).toString('base64url');
  const expiresAt = new Date(Date.now() + INVITE_HOURS * 3600 * 1000).toISOString();
  return { code, invite: { hash: hashOf(code), role, expiresAt } };
}

interface Wisher {
  readonly chat: number;
  readonly isGroup: boolean;
  readonly member: Membership;
  readonly line: string;
}

/** False where the line is about something else. */
export async function fulfil(desk: Desk, update: number, wisher: Wisher): Promise<boolean> {
  const wish = desk.readTeamWish(wisher.line);
  if (wish === undefined) return false;
  const { member, chat } = wisher;
  const tell = (reply: Reply, more?: Parameters<typeof done>[3]): Promise<void> =>
    desk.post.settle(done(desk, update, letters(chat, desk.words(reply)), more));
  switch (wish.is) {
    case 'invite':
      // A link is a key: it is handed over alone.
      if (wisher.isGroup) await tell(say('telegram-privately'));
      else await invite(desk, { member, role: wish.role, tell });
      return true;
    case 'remove': {
      const removed = await namedMember(desk, wish, wisher);
      if (removed === undefined) return false;
      await remove(desk, { member, removed, tell });
      return true;
    }
  }
}

type Tell = (reply: Reply, more?: Parameters<typeof done>[3]) => Promise<void>;

async function invite(
  { username, log }: Desk,
  { member, role, tell }: { member: Membership; role: Role; tell: Tell },
): Promise<void> {
  if (!RULES_OVER[member.role].includes(role)) return tell(say('telegram-not-yours'));
  const made = newInvite(role);
  const link = `https://t.me/${username()}?start=${made.code}`;
  await tell(say('telegram-invite', { role, link: name(link), hours: INVITE_HOURS }), {
    change: { is: 'invited', kitchen: member.kitchen, invite: made.invite },
  });
  log.info({ role }, 'member invited');
}

/** "remove fat" is about meat, also where somebody is called so: it must be a name and no entry. */
async function namedMember(
  desk: Desk,
  wish: TeamWish & { is: 'remove' },
  { member, line }: Wisher,
): Promise<Member | undefined> {
  const members = await desk.post.members(member.kitchen);
  const named = members.find((each) => each.name.toLowerCase() === wish.name);
  if (named === undefined) return undefined;
  const speaker = speakerOf(member.person);
  const at = new Date().toISOString();
  const { outcome } = await tableOf(desk, member).weighUp({
    id: 'wish',
    speaker,
    at,
    text: line,
    role: member.role,
  });
  return outcome === 'recorded' ? undefined : named;
}

async function remove(
  { post, log }: Desk,
  { member, removed, tell }: { member: Membership; removed: Member; tell: Tell },
): Promise<void> {
  if (!RULES_OVER[member.role].includes(removed.role)) return tell(say('telegram-not-yours'));
  const owners = (await post.members(member.kitchen)).filter(({ role }) => role === 'owner');
  if (removed.role === 'owner' && owners.length === 1) return tell(say('telegram-last-owner'));
  await tell(say('telegram-removed', { name: name(removed.name) }), {
    change: { is: 'removed', kitchen: member.kitchen, person: removed.person },
  });
  log.info({ role: removed.role }, 'member removed');
}

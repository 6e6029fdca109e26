// What falls due, as letters: each reader is told what they may see. An alarm rings, and has a button for who takes it.
import { randomBytes } from 'node:crypto';
import type { Meaning } from '../../app/ports/cards.ts';
import type { KitchenId, Posted } from '../../app/ports/store.ts';
import type { Told } from '../../app/ports/table.ts';
import type { Member } from '../../app/ports/team.ts';
import { say } from '../../core/reply.ts';
import type { Role } from '../../core/role.ts';
import { type Desk, letters } from './desk.ts';

export interface Reader {
  readonly chat: number;
  readonly role: Role;
}

interface Listeners {
  readonly members: readonly Member[];
  /** The groups of the kitchen. */
  readonly groups: readonly number[];
}

/**
 * Whom it goes to, each chat once. The team is its groups, and where it has none its owners and leads, each in their own chat; so is
 * somebody who has left.
 */
export function chatsOf(to: Told['to'], { members, groups }: Listeners): readonly Reader[] {
  const named = to === 'team' ? [] : members.filter((member) => isNamed(member, to.speaker));
  const alone = to !== 'team' && named.length > 0 && to.withTeam !== true;
  const team =
    groups.length > 0
      ? groups.map((chat): Reader => ({ chat, role: 'cutter' }))
      : members.filter(({ role }) => role !== 'cutter').map(asReader);
  const readers = [...named.map(asReader), ...(alone ? [] : team)];
  return [...new Map(readers.map((reader) => [reader.chat, reader])).values()];
}

const asReader = ({ person, role }: Member): Reader => ({ chat: person, role });

const isNamed = ({ person, name }: Member, speaker: string): boolean =>
  speaker === `telegram:${person}` || speaker.toLowerCase() === name.toLowerCase();

type Teller = Pick<Desk, 'bot' | 'words' | 'post'>;

export async function postedTo(
  { bot, words, post }: Teller,
  kitchen: KitchenId,
  told: Told,
): Promise<Posted> {
  const [members, groups] = await Promise.all([post.members(kitchen), post.groupsOf(bot, kitchen)]);
  const readers = chatsOf(told.to, { members, groups });
  if (!told.alarm)
    return { bot, letters: readers.flatMap(({ chat, role }) => letters(chat, told.words(role))) };
  const label = words(say('button', { word: 'acknowledge' }));
  const rung = readers.map(({ chat, role }) => {
    const nonce = randomBytes(16).toString('base64url');
    const meaning: Meaning = {
      ...{ nonce, chat, scope: `alarm:${told.key}`, kitchen },
      action: { is: 'entry', entry: { kind: 'acknowledge' } },
    };
    const ringing = letters(chat, told.words(role), { buttons: [[{ label, nonce }]] });
    return { meaning, letters: ringing.map((letter) => ({ ...letter, alarm: true as const })) };
  });
  return {
    bot,
    letters: rung.flatMap((each) => each.letters),
    buttons: { void: [], add: rung.map(({ meaning }) => meaning) },
  };
}

// Groups: people and the bot come and go, and a group becomes a supergroup.
import type { Chat, User } from 'grammy/types';
import { enqueue } from '../updates/queue.ts';
import { changeBotStanding } from '../world/bot-standing.ts';
import { personMember } from '../world/members.ts';
import { BY_PERSON, post } from '../world/messages.ts';
import { knownRoom, knownUser, newRoom } from '../world/rooms.ts';
import {
  botUser,
  type MemberStatus,
  nextNumber,
  nowSeconds,
  type Room,
  type Standing,
  type World,
} from '../world/world.ts';
import { deliverMessage } from './delivery.ts';

export interface NewGroup {
  readonly title: string;
  readonly owner: number;
  readonly members?: readonly number[];
  readonly supergroup?: boolean;
  /** Makes a supergroup public. */
  readonly username?: string;
}

/** A group without the bot: `addBot` brings it in. */
export function addGroup(world: World, group: NewGroup): Chat {
  const { title, username } = group;
  const chat: Chat =
    group.supergroup === true
      ? supergroupChat(world, title, username)
      : { id: -(4_500_000_000 + nextNumber(world)), type: 'group', title };
  const { members } = newRoom(world, chat);
  for (const member of group.members ?? []) members.set(member, 'member');
  members.set(group.owner, 'creator');
  return chat;
}

const supergroupChat = (world: World, title: string, username?: string): Chat.SupergroupChat => ({
  // Documented: supergroups and channels begin with -100.
  id: -1_002_000_000_000 - nextNumber(world),
  type: 'supergroup',
  title,
  ...(username === undefined ? {} : { username }),
});

export interface BotMove {
  readonly chat: number;
  readonly by: number;
}

export function addBot(world: World, { chat, by, as }: BotMove & { readonly as?: Standing }): void {
  const [room, user] = [knownRoom(world, chat), knownUser(world, by)];
  changeBotStanding(world, room, as ?? 'member', user);
  serviceMessage(world, room, { from: user, new_chat_members: [botUser(world)] });
}

export function removeBot(world: World, { chat, by }: BotMove): void {
  const [room, user] = [knownRoom(world, chat), knownUser(world, by)];
  // A basic group still tells the bot that it left; a supergroup is closed to it by then.
  if (room.chat.type === 'group')
    serviceMessage(world, room, { from: user, left_chat_member: botUser(world) });
  changeBotStanding(world, room, 'kicked', user);
}

/** Promoted, demoted, or muted. */
export function setBotStanding(world: World, move: BotMove & { readonly as: Standing }): void {
  changeBotStanding(world, knownRoom(world, move.chat), move.as, knownUser(world, move.by));
}

export interface MemberMove {
  readonly chat: number;
  readonly user: number;
  /** Who adds or removes; the member where absent. */
  readonly by?: number;
}

export function addMember(
  world: World,
  { chat, user, by, as }: MemberMove & { readonly as?: MemberStatus },
): void {
  const room = knownRoom(world, chat);
  changeMember(world, room, { user, by: by ?? user, status: as ?? 'member' });
  serviceMessage(world, room, {
    from: knownUser(world, by ?? user),
    new_chat_members: [knownUser(world, user)],
  });
}

export function removeMember(world: World, { chat, user, by }: MemberMove): void {
  const room = knownRoom(world, chat);
  changeMember(world, room, { user, by: by ?? user, status: undefined });
  serviceMessage(world, room, {
    from: knownUser(world, by ?? user),
    left_chat_member: knownUser(world, user),
  });
}

interface Change {
  readonly user: number;
  readonly by: number;
  readonly status: MemberStatus | undefined;
}

/** Documented: chat_member comes to an administrator only, and only where it was asked for. */
function changeMember(world: World, room: Room, { user, by, status }: Change): void {
  const person = knownUser(world, user);
  const old_chat_member = personMember(person, room.members.get(user));
  if (status === undefined) room.members.delete(user);
  else room.members.set(user, status);
  if (room.standing !== 'administrator') return;
  const new_chat_member = personMember(person, status);
  const from = knownUser(world, by);
  enqueue(world.queue, {
    chat_member: { chat: room.chat, from, date: nowSeconds(world), old_chat_member, new_chat_member },
  });
}

export interface Migration {
  readonly chat: number;
  readonly by: number;
  /** The service also tells of the bot's going and coming; not every time. */
  readonly withMemberUpdates?: boolean;
}

/** The supergroup that takes the group's place. Messages of the old one can no longer be reached. */
export function migrate(world: World, { chat, by, withMemberUpdates }: Migration): Chat {
  const old = knownRoom(world, chat);
  const from = knownUser(world, by);
  const room = newRoom(world, supergroupChat(world, old.chat.title ?? ''));
  for (const [member, status] of old.members) room.members.set(member, status);
  room.standing = old.standing;
  serviceMessage(world, old, { from, migrate_to_chat_id: room.chat.id });
  old.movedTo = room.chat.id;
  if (withMemberUpdates === true) tellOfMove(world, old, room, from);
  serviceMessage(world, room, { from, migrate_from_chat_id: chat });
  return room.chat;
}

function tellOfMove(world: World, old: Room, room: Room, from: User): void {
  const { standing } = room;
  changeBotStanding(world, old, 'left', from);
  room.standing = 'left';
  changeBotStanding(world, room, standing, from);
}

function serviceMessage(world: World, room: Room, content: Parameters<typeof post>[2]): void {
  deliverMessage(world, room, post(world, room, content, BY_PERSON));
}

// Finding a chat, and whether the bot may write in it.
import type { Chat, User } from 'grammy/types';
import { text, type Params } from '../http/params.ts';
import { badRequest, forbidden } from '../refusal.ts';
import type { Room, World } from './world.ts';

/** The chat that `chat_id` names: a number, or @username of a public group. */
export function roomOf(world: World, params: Params): Room {
  const id = text(params, 'chat_id') ?? '';
  if (id === '') throw badRequest('chat_id is empty');
  const room = id.startsWith('@') ? byUsername(world, id.slice(1)) : world.rooms.get(Number(id));
  if (room === undefined) throw badRequest('chat not found');
  if (room.movedTo !== undefined)
    throw badRequest('group chat was upgraded to a supergroup chat', { migrate_to_chat_id: room.movedTo });
  return room;
}

/** The same, for a method that needs the bot inside. */
export function openRoomOf(world: World, params: Params): Room {
  const room = roomOf(world, params);
  const why = closedBecause(room);
  if (why !== undefined) throw forbidden(why);
  return room;
}

export function closedBecause({ chat, standing, deactivated }: Room): string | undefined {
  if (deactivated === true) return 'user is deactivated';
  switch (standing) {
    case 'never':
      return "bot can't initiate conversation with a user";
    case 'kicked':
      return chat.type === 'private'
        ? 'bot was blocked by the user'
        : `bot was kicked from the ${kind(chat)}`;
    case 'left':
      return `bot is not a member of the ${kind(chat)}`;
    case 'member':
    case 'administrator':
    case 'restricted':
      return undefined;
  }
}

const kind = ({ type }: Chat): string => (type === 'group' ? 'group chat' : `${type} chat`);

const byUsername = (world: World, name: string): Room | undefined =>
  [...world.rooms.values()].find(({ chat }) => chat.type !== 'private' && chat.username === name);

/** For tests: a chat that must exist. */
export function knownRoom(world: World, id: number): Room {
  const room = world.rooms.get(id);
  if (room === undefined) throw new Error(`no chat ${String(id)} in this test`);
  return room;
}

export function knownUser(world: World, id: number): User {
  const user = world.users.get(id);
  if (user === undefined) throw new Error(`no user ${String(id)} in this test`);
  return user;
}

/** A chat without the bot in it. */
export function newRoom(world: World, chat: Chat): Room {
  const room: Room = {
    chat,
    standing: chat.type === 'private' ? 'never' : 'left',
    members: new Map(),
    posted: new Map(),
    messageIds: chat.type === 'supergroup' ? { last: 0 } : world.accountMessageIds,
  };
  world.rooms.set(chat.id, room);
  return room;
}

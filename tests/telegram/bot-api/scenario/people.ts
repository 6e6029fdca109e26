// People: who they are, and whether they let the bot write to them.
import type { Chat, User } from 'grammy/types';
import { changeBotStanding } from '../world/bot-standing.ts';
import { knownRoom, knownUser, newRoom } from '../world/rooms.ts';
import { nextNumber, type Room, type World } from '../world/world.ts';

export interface NewUser {
  readonly first_name: string;
  readonly last_name?: string;
  readonly username?: string;
  readonly language_code?: string;
  /** A number of more than 32 bits where absent, as new accounts have. */
  readonly id?: number;
}

/** A person who has not started the bot. Their private chat has their own id. */
export function addUser(world: World, { id, ...names }: NewUser): User {
  const user: User = { id: id ?? 5_000_000_000 + nextNumber(world), is_bot: false, ...names };
  world.users.set(user.id, user);
  newRoom(world, privateChat(user));
  return user;
}

const privateChat = ({ id, first_name, last_name, username }: User): Chat.PrivateChat => ({
  id,
  type: 'private',
  first_name,
  ...(last_name === undefined ? {} : { last_name }),
  ...(username === undefined ? {} : { username }),
});

/** The person stops the bot: sends get 403, and the bot is told. */
export const block = (world: World, user: number): number | undefined =>
  changeBotStanding(world, knownRoom(world, user), 'kicked', knownUser(world, user));

export const unblock = (world: World, user: number): number | undefined =>
  changeBotStanding(world, knownRoom(world, user), 'member', knownUser(world, user));

/** The account is gone: sends get 403, and the bot is not told. */
export function deactivate(world: World, user: number): void {
  knownRoom(world, user).deactivated = true;
}

/** A person writes only where they are. Their first message in a private chat opens it. */
export function roomToWriteIn(world: World, user: number, chat: number): Room {
  const room = knownRoom(world, chat);
  if (room.chat.type !== 'private') {
    if (!room.members.has(user)) throw new Error(`user ${user} is no member of chat ${chat}`);
    return room;
  }
  if (chat !== user) throw new Error(`the private chat ${chat} is not that of user ${user}`);
  if (room.standing === 'kicked') throw new Error(`user ${user} has blocked the bot`);
  if (room.standing === 'never') room.standing = 'member';
  return room;
}

// The bot comes, goes, is blocked or promoted: each is an update of its own kind.
import type { User } from 'grammy/types';
import { enqueue } from '../updates/queue.ts';
import { botMember } from './members.ts';
import { nowSeconds, type Room, type Standing, type World } from './world.ts';

/** The id of the update. */
export function changeBotStanding(
  world: World,
  room: Room,
  standing: Standing,
  by: User,
): number | undefined {
  const old = room.standing;
  room.standing = standing;
  return enqueue(world.queue, {
    my_chat_member: {
      chat: room.chat,
      from: by,
      date: nowSeconds(world),
      old_chat_member: botMember(world, old),
      new_chat_member: botMember(world, standing),
    },
  });
}

// Under whose name a message stands: the person's, the group's, a channel's.
import type { Message } from 'grammy/types';
import { knownUser } from '../world/rooms.ts';
import type { Room, World } from '../world/world.ts';

export type Disguise = 'anonymous admin' | { readonly channel: string };

type Sender = Pick<Message, 'from' | 'sender_chat' | 'author_signature'>;

/** Fixed accounts that stand in `from` for a chat, as the documentation of sender_chat says. */
const GROUP_STAND_IN = {
  id: 1_087_968_824,
  is_bot: true,
  first_name: 'Group',
  username: 'GroupAnonymousBot',
};
const CHANNEL_STAND_IN = { id: 136_817_688, is_bot: true, first_name: 'Channel', username: 'Channel_Bot' };

export function senderOf(world: World, room: Room, from: number, as: Disguise | undefined): Sender {
  if (as === undefined) return { from: knownUser(world, from) };
  if (as === 'anonymous admin') return { from: GROUP_STAND_IN, sender_chat: room.chat };
  const channel = { id: -1_001_999_999_999, type: 'channel' as const, title: as.channel };
  return { from: CHANNEL_STAND_IN, sender_chat: channel };
}

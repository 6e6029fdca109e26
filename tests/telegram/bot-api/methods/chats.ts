// What the bot may ask about a chat, and leaving one.
import type { ChatFullInfo, ChatMember } from 'grammy/types';
import { integer, text, type Params } from '../http/params.ts';
import { badRequest } from '../refusal.ts';
import { changeBotStanding } from '../world/bot-standing.ts';
import { memberOf } from '../world/members.ts';
import { openRoomOf, roomOf } from '../world/rooms.ts';
import { botUser, type World } from '../world/world.ts';

const CHAT_ACTIONS = [
  'typing',
  'upload_photo',
  'record_voice',
  'upload_voice',
  'upload_document',
  'choose_sticker',
];

export function getChat(world: World, params: Params): ChatFullInfo {
  const room = roomOf(world, params);
  if (room.standing === 'never') throw badRequest('chat not found');
  if (room.chat.type !== 'private') openRoomOf(world, params);
  // A test reads little of a chat's profile: what the type asks for is there.
  return { ...room.chat, accent_color_id: 0, max_reaction_count: 11 } as ChatFullInfo;
}

export function getChatMember(world: World, params: Params): ChatMember {
  const room = openRoomOf(world, params);
  const id = integer(params, 'user_id');
  if (id === undefined) throw badRequest('invalid user_id specified');
  return memberOf(world, room, id);
}

export function leaveChat(world: World, params: Params): true {
  const room = openRoomOf(world, params);
  if (room.chat.type === 'private') throw badRequest("chat member status can't be changed in private chats");
  changeBotStanding(world, room, 'left', botUser(world));
  return true;
}

export function sendChatAction(world: World, params: Params): true {
  openRoomOf(world, params);
  if (!CHAT_ACTIONS.includes(text(params, 'action') ?? ''))
    throw badRequest('wrong parameter action in request');
  return true;
}

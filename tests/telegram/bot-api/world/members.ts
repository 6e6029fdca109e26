// Memberships in the shapes of the service.
import type { ChatMember, User } from 'grammy/types';
import { badRequest } from '../refusal.ts';
import { botUser, type MemberStatus, type Room, type Standing, type World } from './world.ts';

/** Of the many rights of an administrator those that a bot of ours may meet; the others are false in effect. */
const RIGHTS = {
  can_be_edited: false,
  is_anonymous: false,
  can_manage_chat: true,
  can_delete_messages: true,
  can_manage_video_chats: false,
  can_restrict_members: false,
  can_promote_members: false,
  can_change_info: false,
  can_invite_users: true,
  can_post_stories: false,
  can_edit_stories: false,
  can_delete_stories: false,
};

export function memberOf(world: World, room: Room, userId: number): ChatMember {
  if (userId === world.bot.id) return botMember(world, room.standing);
  const user = world.users.get(userId);
  // A user whom the service does not know, or does not let this bot know.
  if (user === undefined) throw badRequest('user not found');
  const isPartner = room.chat.type === 'private' && room.chat.id === userId;
  return personMember(user, isPartner ? 'member' : room.members.get(userId));
}

export function personMember(user: User, status: MemberStatus | undefined): ChatMember {
  switch (status) {
    case undefined:
      return { status: 'left', user };
    case 'member':
      return { status, user };
    case 'creator':
      return { status, user, is_anonymous: false };
    case 'administrator':
      return { status, user, ...RIGHTS } as ChatMember;
  }
}

export function botMember(world: World, standing: Standing): ChatMember {
  const user = botUser(world);
  switch (standing) {
    case 'never':
    case 'left':
      return { status: 'left', user };
    case 'kicked':
      return { status: 'kicked', user, until_date: 0 };
    case 'member':
      return { status: 'member', user };
    case 'administrator':
      return { status: 'administrator', user, ...RIGHTS } as ChatMember;
    case 'restricted':
      return { status: 'restricted', user, is_member: true, can_send_messages: false } as ChatMember;
  }
}

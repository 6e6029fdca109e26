// Messages in a chat: written, found, edited.
import type { Message } from 'grammy/types';
import { type Posted, type Room, type World, nowSeconds } from './world.ts';

export type Content = Omit<Message, 'message_id' | 'date' | 'chat'>;

export interface Manner {
  readonly fromBot: boolean;
  readonly silent: boolean;
}

export const BY_PERSON: Manner = { fromBot: false, silent: false };

export function post(world: World, room: Room, content: Content, manner: Manner): Posted {
  room.messageIds.last += 1;
  const { from, sender_chat, ...rest } = withoutAbsent(content);
  const message: Message = {
    message_id: room.messageIds.last,
    ...(from === undefined ? {} : { from }),
    ...(sender_chat === undefined ? {} : { sender_chat }),
    chat: room.chat,
    date: nowSeconds(world),
    ...rest,
  };
  const posted = { message, ...manner, deleted: false };
  room.posted.set(message.message_id, posted);
  return posted;
}

/** A message that is still there. */
export function standing(room: Room, id: number | undefined): Posted | undefined {
  const posted = id === undefined ? undefined : room.posted.get(id);
  return posted?.deleted === false ? posted : undefined;
}

/** The edited message: a field that is undefined in `changes` goes. */
export const edited = (world: World, posted: Posted, changes: Partial<Message>): Message =>
  withoutAbsent({ ...posted.message, ...changes, edit_date: nowSeconds(world) });

/** As it is quoted: a reply in a reply is left out. */
export function quoted({ message }: Posted): NonNullable<Message['reply_to_message']> {
  const { reply_to_message: _, ...rest } = message;
  return rest as NonNullable<Message['reply_to_message']>;
}

function withoutAbsent<T extends object>(value: T): T {
  return Object.fromEntries(Object.entries(value).filter(([, field]) => field !== undefined)) as T;
}

// What people do in a chat: write, edit, forward, send files. Each makes an update, if it reaches the bot.
import type { Message, MessageEntity, MessageOrigin } from 'grammy/types';
import { readMarked } from '../text/marked.ts';
import { BY_PERSON, edited, post, quoted, standing, type Content } from '../world/messages.ts';
import { knownRoom, knownUser } from '../world/rooms.ts';
import type { Posted, Room, World } from '../world/world.ts';
import { deliverEdit, deliverMessage } from './delivery.ts';
import { roomToWriteIn } from './people.ts';
import { type Disguise, senderOf } from './senders.ts';

export interface Place {
  readonly from: number;
  /** The private chat where absent. */
  readonly chat?: number;
  /** The message that is answered. */
  readonly replyTo?: number;
  readonly as?: Disguise;
  /** Name of another bot through which it was sent. */
  readonly viaBot?: string;
  readonly forwardOf?: { readonly chat: number; readonly message_id: number } | 'hidden user';
  /** Any other fields of the message. */
  readonly extra?: Partial<Message>;
}

export interface Saying extends Place {
  readonly text: string;
}

export interface Said {
  readonly message: Message;
  /** Absent where the bot does not get to see it. */
  readonly updateId: number | undefined;
}

export const say = (world: World, saying: Saying): Said => write(world, saying, textContent(saying.text));

/** A deep link: the client shows only /start, and sends the code with it. */
export const start = (world: World, from: number, code?: string): Said =>
  say(world, { from, text: code === undefined ? '/start' : `/start ${code}` });

export interface Editing {
  readonly chat: number;
  readonly message_id: number;
  readonly text: string;
}

export function editOwn(world: World, { chat, message_id, text }: Editing): Said {
  const room = knownRoom(world, chat);
  const posted = written(room, message_id);
  if (posted.fromBot) throw new Error('people edit only their own messages');
  posted.message = edited(world, posted, textContent(text));
  return { message: posted.message, updateId: deliverEdit(world, room, posted) };
}

/** People may take their messages back; a bot is not told. */
export function deleteOwn(world: World, chat: number, message_id: number): void {
  written(knownRoom(world, chat), message_id).deleted = true;
}

/** Any message: the content as the service would show it. */
export function write(world: World, place: Place, content: Content): Said {
  const room = roomToWriteIn(world, place.from, place.chat ?? place.from);
  const posted = post(world, room, { ...content, ...framing(world, room, place) }, BY_PERSON);
  return { message: posted.message, updateId: deliverMessage(world, room, posted) };
}

function framing(world: World, room: Room, place: Place): Content {
  const via = place.viaBot;
  return {
    ...senderOf(world, room, place.from, place.as),
    ...(place.replyTo === undefined ? {} : { reply_to_message: quoted(written(room, place.replyTo)) }),
    ...(via === undefined ? {} : { via_bot: { id: 999_001, is_bot: true, first_name: via, username: via } }),
    ...(place.forwardOf === undefined ? {} : { forward_origin: originOf(world, place.forwardOf) }),
    ...place.extra,
  };
}

function originOf(world: World, of: NonNullable<Place['forwardOf']>): MessageOrigin {
  if (of === 'hidden user') return { type: 'hidden_user', sender_user_name: 'Someone', date: 1_700_000_000 };
  const { date, from, sender_chat } = written(knownRoom(world, of.chat), of.message_id).message;
  if (sender_chat !== undefined) return { type: 'chat', sender_chat, date };
  return { type: 'user', sender_user: from ?? knownUser(world, of.chat), date };
}

function textContent(text: string): { text: string; entities: MessageEntity[] | undefined } {
  const marked = readMarked({ text }, { text: 'text', entities: 'entities' });
  if (marked === undefined) throw new Error('people cannot send an empty text');
  return { text: marked.text, entities: marked.entities.length === 0 ? undefined : [...marked.entities] };
}

function written(room: Room, id: number): Posted {
  const posted = standing(room, id);
  if (posted === undefined) throw new Error(`no message ${id} in chat ${room.chat.id}`);
  return posted;
}

// Messages of the bot: sent, edited, taken away.
import type { InlineKeyboardMarkup, Message, MessageEntity } from 'grammy/types';
import { flag, integer, type Params } from '../http/params.ts';
import { badRequest } from '../refusal.ts';
import { readMarked, type Marked } from '../text/marked.ts';
import { spend } from '../world/limits.ts';
import { edited, post, standing } from '../world/messages.ts';
import { openRoomOf } from '../world/rooms.ts';
import { botUser, nowSeconds, type Posted, type Room, type World } from '../world/world.ts';
import { readKeyboard } from './keyboard.ts';
import { readReply } from './reply.ts';

/** In UTF-16 units, after the formatting is read. */
const LONGEST_TEXT = 4096;
const DELETABLE_SECONDS = 48 * 3600;
const TEXT = { text: 'text', entities: 'entities' };

export function sendMessage(world: World, params: Params): Message {
  const room = openRoomOf(world, params);
  const { text, entities } = readText(params, 'message is too long');
  const reply_markup = readKeyboard(params, false);
  const reply_to_message = readReply(room, params);
  return postFromBot(world, room, params, { text, entities, reply_to_message, reply_markup });
}

/** A message with its content read and checked: counted against the limits, then there. */
export function postFromBot(world: World, room: Room, params: Params, content: Partial<Message>): Message {
  if (room.standing === 'restricted') throw badRequest('not enough rights to send text messages to the chat');
  spend(world, room, 'send');
  const manner = { fromBot: true, silent: flag(params, 'disable_notification') };
  return post(world, room, { from: botUser(world), ...content }, manner).message;
}

/** Documented: without a reply_markup the keyboard goes. */
export function editMessageText(world: World, params: Params): Message {
  const room = openRoomOf(world, params);
  const { text, entities } = readText(params, 'MESSAGE_TOO_LONG');
  const reply_markup = readKeyboard(params, true);
  const posted = editable(room, params);
  if (posted.message.text === undefined) throw badRequest('there is no text in the message to edit');
  return edit(world, room, posted, { text, entities, reply_markup });
}

export function editMessageReplyMarkup(world: World, params: Params): Message {
  const room = openRoomOf(world, params);
  const reply_markup = readKeyboard(params, true);
  return edit(world, room, editable(room, params), { reply_markup });
}

export function deleteMessage(world: World, params: Params): true {
  const room = openRoomOf(world, params);
  const posted = standing(room, messageId(params));
  if (posted === undefined) throw badRequest('message to delete not found');
  const mayDelete = posted.fromBot || room.chat.type === 'private' || room.standing === 'administrator';
  if (!mayDelete || nowSeconds(world) - posted.message.date > DELETABLE_SECONDS)
    throw badRequest("message can't be deleted");
  posted.deleted = true;
  return true;
}

interface Read {
  readonly text: string;
  readonly entities: MessageEntity[] | undefined;
}

function readText(params: Params, tooLong: string): Read {
  const marked = readMarked(params, TEXT);
  if (marked === undefined) throw badRequest('message text is empty');
  if (marked.text.length > LONGEST_TEXT) throw badRequest(tooLong);
  return { text: marked.text, entities: entitiesOf(marked) };
}

export const entitiesOf = ({ entities }: Marked): MessageEntity[] | undefined =>
  entities.length === 0 ? undefined : [...entities];

function messageId(params: Params): number {
  const id = integer(params, 'message_id');
  if (id === undefined) throw badRequest('message identifier is not specified');
  return id;
}

function editable(room: Room, params: Params): Posted {
  const posted = standing(room, messageId(params));
  if (posted === undefined) throw badRequest('message to edit not found');
  if (!posted.fromBot) throw badRequest("message can't be edited");
  return posted;
}

interface Changes {
  readonly text?: string;
  readonly entities?: MessageEntity[] | undefined;
  readonly reply_markup: InlineKeyboardMarkup | undefined;
}

function edit(world: World, room: Room, posted: Posted, changes: Changes): Message {
  const before = posted.message;
  if (isSame({ ...before, ...changes }, before))
    throw badRequest(
      'message is not modified: specified new message content and reply markup are exactly the same as a current content and reply markup of the message',
    );
  spend(world, room, 'edit');
  posted.message = edited(world, posted, changes);
  return posted.message;
}

const isSame = (one: Message, other: Message): boolean =>
  one.text === other.text &&
  JSON.stringify(one.entities) === JSON.stringify(other.entities) &&
  JSON.stringify(one.reply_markup) === JSON.stringify(other.reply_markup);

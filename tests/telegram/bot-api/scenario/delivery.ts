// Which messages of people reach the bot, and under which kind of update.
import type { Message, Update } from 'grammy/types';
import { enqueue } from '../updates/queue.ts';
import { closedBecause } from '../world/rooms.ts';
import type { Posted, Room, World } from '../world/world.ts';

const SERVICE: readonly (keyof Message)[] = [
  'new_chat_members',
  'left_chat_member',
  'migrate_to_chat_id',
  'migrate_from_chat_id',
];

/** The id of the update, or undefined where the bot does not get to see the message. */
export function deliverMessage(world: World, room: Room, { message }: Posted): number | undefined {
  if (!reaches(world, room, message)) return undefined;
  return enqueue(world.queue, { message: message as NonNullable<Update['message']> });
}

export function deliverEdit(world: World, room: Room, { message }: Posted): number | undefined {
  if (!reaches(world, room, message)) return undefined;
  return enqueue(world.queue, { edited_message: message as NonNullable<Update['edited_message']> });
}

function reaches(world: World, room: Room, message: Message): boolean {
  if (closedBecause(room) !== undefined) return false;
  const seesAll = room.chat.type === 'private' || room.standing === 'administrator';
  return seesAll || world.options.readsAllGroupMessages || isForBot(world, message);
}

/** Documented for the privacy mode: commands, replies to the bot, service messages. */
function isForBot({ bot }: World, message: Message): boolean {
  const isReply = message.reply_to_message?.from?.id === bot.id;
  return isReply || SERVICE.some((kind) => kind in message) || isCommandFor(bot.username, message);
}

function isCommandFor(username: string, { text = '', entities = [] }: Message): boolean {
  const first = entities.find(({ type, offset }) => type === 'bot_command' && offset === 0);
  const to = text.slice(0, first?.length ?? 0).split('@')[1];
  return first !== undefined && (to === undefined || to.toLowerCase() === username.toLowerCase());
}

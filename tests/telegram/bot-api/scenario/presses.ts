// Buttons: pressed, pressed twice, pressed when they are long gone.
import type { CallbackQuery, InlineKeyboardButton, InlineKeyboardMarkup } from 'grammy/types';
import { enqueue } from '../updates/queue.ts';
import { standing } from '../world/messages.ts';
import { closedBecause, knownRoom, knownUser } from '../world/rooms.ts';
import { nextNumber, nowMs, type Pressed, type Room, type World } from '../world/world.ts';

export interface Press {
  readonly user: number;
  readonly chat: number;
  readonly message_id: number;
  /** The button: by its label, or by its data. */
  readonly text?: string;
  readonly data?: string;
  /** Sends the data though there is no such button: an old keyboard on a screen, or a forged client. */
  readonly forged?: boolean;
}

export interface PressMade {
  readonly callbackId: string;
  readonly data: string;
  readonly updateId: number | undefined;
}

export function press(world: World, asked: Press): PressMade {
  const room = knownRoom(world, asked.chat);
  const from = knownUser(world, asked.user);
  const data = asked.forged === true ? (asked.data ?? '') : buttonData(room, asked);
  const id = String(4_000_000_000_000_000 + nextNumber(world));
  world.presses.set(id, { id, user: from.id, data, atMs: nowMs(world) });
  const query = { id, from, chat_instance: String(room.chat.id * 31), data, message: shown(room, asked) };
  const isOpen = closedBecause(room) === undefined;
  return {
    callbackId: id,
    data,
    updateId: isOpen ? enqueue(world.queue, { callback_query: query }) : undefined,
  };
}

function buttonData(room: Room, { message_id, text, data }: Press): string {
  const keyboard = standing(room, message_id)?.message.reply_markup;
  const found = buttonsOf(keyboard).find(
    (button) =>
      button.data !== undefined && (text === undefined ? button.data === data : button.text === text),
  );
  if (found?.data === undefined)
    throw new Error(`no button ${text ?? data ?? ''} under message ${message_id} of chat ${room.chat.id}`);
  return found.data;
}

/** A message that is gone is named by its place alone. */
function shown(room: Room, { message_id }: Press): NonNullable<CallbackQuery['message']> {
  const posted = standing(room, message_id);
  if (posted !== undefined) return posted.message;
  return { chat: room.chat, message_id, date: 0 };
}

export interface Button {
  readonly text: string;
  readonly data: string | undefined;
}

export const buttonOf = (button: InlineKeyboardButton): Button => ({
  text: button.text,
  data: 'callback_data' in button ? button.callback_data : undefined,
});

const buttonsOf = (keyboard: InlineKeyboardMarkup | undefined): readonly Button[] =>
  (keyboard?.inline_keyboard ?? []).flat().map(buttonOf);

/** What the bot has answered to a press, if it has. */
export const pressAnswer = (world: World, callbackId: string): Pressed['answer'] =>
  world.presses.get(callbackId)?.answer;

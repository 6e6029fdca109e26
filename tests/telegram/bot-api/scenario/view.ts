// A chat as a person sees it now: edited texts, keyboards, reactions, without what was deleted.
import type { Message, MessageEntity } from 'grammy/types';
import { knownRoom } from '../world/rooms.ts';
import type { Posted, World } from '../world/world.ts';
import { type Button, buttonOf } from './presses.ts';

export interface Seen {
  readonly message_id: number;
  readonly by: number | 'bot';
  /** The text, or the caption of a file. */
  readonly text: string;
  readonly entities: readonly MessageEntity[];
  readonly buttons: readonly (readonly Button[])[];
  readonly reaction: string | undefined;
  readonly silent: boolean;
  readonly isEdited: boolean;
  readonly replyTo: number | undefined;
  readonly message: Message;
}

export const seen = (world: World, chat: number): readonly Seen[] =>
  [...knownRoom(world, chat).posted.values()].filter(({ deleted }) => !deleted).map(seenOf);

export const seenFromBot = (world: World, chat: number): readonly Seen[] =>
  seen(world, chat).filter(({ by }) => by === 'bot');

function seenOf({ message, fromBot, silent, reaction }: Posted): Seen {
  return {
    message_id: message.message_id,
    by: fromBot ? 'bot' : (message.from?.id ?? 0),
    text: message.text ?? message.caption ?? '',
    entities: message.entities ?? message.caption_entities ?? [],
    buttons: (message.reply_markup?.inline_keyboard ?? []).map((row) => row.map(buttonOf)),
    reaction,
    silent,
    isEdited: message.edit_date !== undefined,
    replyTo: message.reply_to_message?.message_id,
    message,
  };
}

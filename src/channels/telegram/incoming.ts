// An update as the service sends it, as what matters of it here.
import type { CallbackQuery, Chat, ChatMemberUpdated, Message, Update, User } from 'grammy/types';
import type { Update as Received } from '../../app/ports/mailbox.ts';

interface Sender {
  readonly chat: number;
  readonly isGroup: boolean;
  readonly person: number;
  readonly name: string;
  /** When it was said: UTC instant, ISO 8601. */
  readonly at: string;
  /** Surely meant for the bot: in a chat of two, by its name, or as an answer to what it wrote. */
  readonly isAddressed: boolean;
}

export type Incoming =
  /** `answers`: the message of the bot that it is an answer to. */
  | (Sender & {
      readonly is: 'text';
      readonly message: number;
      readonly text: string;
      readonly answers?: number;
    })
  /** An earlier text in its new form. */
  | (Sender & { readonly is: 'edited'; readonly message: number; readonly text: string })
  | (Sender & {
      readonly is: 'press';
      readonly press: string;
      readonly data: string;
      readonly message?: number;
    })
  /** `secondhand`: not said by the person here and now, so that it is no entry. */
  | (Sender & {
      readonly is: 'voice';
      readonly message: number;
      readonly file: string;
      readonly bytes: number;
      /** As the service tells it, or 0. */
      readonly seconds: number;
      readonly answers?: number;
    })
  | (Sender & { readonly is: 'secondhand' | 'unread' })
  /** The bot is brought into a group, or is in it no more. */
  | { readonly is: 'came'; readonly chat: number; readonly by: number }
  | { readonly is: 'gone'; readonly chat: number }
  | { readonly is: 'moved'; readonly from: number; readonly to: number }
  | { readonly is: 'nothing' };

export type Personal = Extract<Incoming, Sender>;

/** The kinds of updates that are asked of the service. */
export const ALLOWED_UPDATES = ['message', 'edited_message', 'callback_query', 'my_chat_member'] as const;

/** As it is stored: with its chat, so that each chat has its turn. */
export const asStored = (update: Update): Received => ({
  id: update.update_id,
  chat: chatOf(update)?.id ?? 0,
  body: JSON.stringify(update),
});

const chatOf = ({ message, edited_message, callback_query, my_chat_member }: Update): Chat | undefined =>
  (message ?? edited_message ?? callback_query?.message ?? my_chat_member)?.chat;

/** A voice note is heard for seconds. */
export const takesTime = ({ body }: Pick<Received, 'body'>): boolean => {
  const { message } = JSON.parse(body) as Update;
  return message !== undefined && soundIn(message) !== undefined;
};

interface SoundFile {
  readonly file_id: string;
  readonly file_size?: number;
  readonly duration?: number;
}

/** A voice note, or a file of sound that was sent as one. */
function soundIn({ voice, audio, document }: Message): SoundFile | undefined {
  return voice ?? audio ?? (document?.mime_type?.startsWith('audio/') === true ? document : undefined);
}

/** `username`: under which the bot is called in a group. */
export function readUpdate(update: Update, username: string): Incoming {
  const { message, edited_message, callback_query, my_chat_member } = update;
  if (my_chat_member !== undefined) return readStanding(my_chat_member);
  if (callback_query !== undefined) return readPress(callback_query);
  const posted = message ?? edited_message;
  if (posted === undefined) return { is: 'nothing' };
  const { chat, migrate_to_chat_id: to, migrate_from_chat_id: from } = posted;
  if (to !== undefined) return { is: 'moved', from: chat.id, to };
  if (from !== undefined) return { is: 'moved', from, to: chat.id };
  return readMessage(posted, { isEdited: message === undefined, username });
}

function readStanding({ chat, from, new_chat_member: { status } }: ChatMemberUpdated): Incoming {
  if (chat.type === 'private') return { is: 'nothing' };
  const isIn = status === 'member' || status === 'administrator' || status === 'restricted';
  return isIn ? { is: 'came', chat: chat.id, by: from.id } : { is: 'gone', chat: chat.id };
}

/** A press tells no time: it is now. */
function readPress({ id, from, message, data }: CallbackQuery): Incoming {
  if (message === undefined || data === undefined) return { is: 'nothing' };
  const { chat, message_id } = message;
  const at = new Date().toISOString();
  const isGroup = chat.type !== 'private';
  const sender = { chat: chat.id, isGroup, person: from.id, name: nameOf(from), at, isAddressed: true };
  return { is: 'press', ...sender, press: id, data, message: message_id };
}

interface Reading {
  readonly isEdited: boolean;
  readonly username: string;
}

function readMessage(message: Message, { isEdited, username }: Reading): Incoming {
  const { from, chat } = message;
  if (from === undefined || (from.is_bot && message.sender_chat === undefined)) return { is: 'nothing' };
  const isGroup = chat.type !== 'private';
  const words = message.text === undefined ? undefined : calledBy(message.text, username);
  // A command for another bot.
  if (message.text !== undefined && words === undefined) return { is: 'nothing' };
  const isAnswer = message.reply_to_message?.from?.username === username;
  const sender: Sender = {
    ...{ chat: chat.id, isGroup, person: from.id, name: nameOf(from) },
    at: new Date(message.date * 1000).toISOString(),
    isAddressed: !isGroup || isAnswer || words?.isCalled === true,
  };
  if (isSecondhand(message)) return isEdited ? { is: 'nothing' } : { is: 'secondhand', ...sender };
  if (words === undefined) {
    if (isEdited || isService(message)) return { is: 'nothing' };
    const sound = soundIn(message);
    if (sound === undefined) return { is: 'unread', ...sender };
    const { file_id: file, file_size: bytes = 0, duration: seconds = 0 } = sound;
    return {
      is: 'voice',
      ...sender,
      message: message.message_id,
      file,
      bytes,
      seconds,
      ...answersOf(message, isAnswer),
    };
  }
  const said = { ...sender, message: message.message_id, text: words.text };
  if (isEdited) return { is: 'edited', ...said };
  return { is: 'text', ...said, ...answersOf(message, isAnswer) };
}

function answersOf({ reply_to_message: answered }: Message, isAnswer: boolean): { answers?: number } {
  return isAnswer && answered !== undefined ? { answers: answered.message_id } : {};
}

/** The words without the name of the bot; a command is the word itself. Undefined where another bot is called. */
function calledBy(text: string, username: string): { text: string; isCalled: boolean } | undefined {
  const command = /^\/(\w+)(?:@(\w+))?/.exec(text);
  const called = command?.[2];
  if (called !== undefined && called.toLowerCase() !== username.toLowerCase()) return undefined;
  const plain = called === undefined ? text : text.replace(`@${called}`, '');
  const words = plain.split(/\s+/);
  const isName = (word: string): boolean =>
    word.toLowerCase().replace(/[,:]$/, '') === `@${username.toLowerCase()}`;
  const isCalled = command !== null || words.some(isName);
  return { text: words.some(isName) ? words.filter((word) => !isName(word)).join(' ') : plain, isCalled };
}

const isSecondhand = ({ forward_origin, via_bot, sender_chat }: Message): boolean =>
  forward_origin !== undefined || via_bot !== undefined || sender_chat !== undefined;

const isService = ({
  new_chat_members,
  left_chat_member,
  pinned_message,
  new_chat_title,
}: Message): boolean =>
  [new_chat_members, left_chat_member, pinned_message, new_chat_title].some((each) => each !== undefined);

const LONGEST_NAME = 32;

/** For the eye only. What turns or hides text is left out. */
function nameOf({ first_name, id }: User): string {
  const plain = first_name.replace(/[\p{C}\p{Z}]+/gu, ' ').trim();
  return plain === '' ? String(id) : Array.from(plain).slice(0, LONGEST_NAME).join('');
}

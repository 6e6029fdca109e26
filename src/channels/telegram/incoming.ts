// An update as the service sends it, as what matters of it here.
import type { Message, Update, User } from 'grammy/types';

interface Sender {
  readonly chat: number;
  readonly person: number;
  readonly name: string;
  /** When it was said: UTC instant, ISO 8601. */
  readonly at: string;
}

export type Incoming =
  | (Sender & { readonly is: 'text'; readonly message: number; readonly text: string })
  /** `secondhand`: not said by the person here and now, so that it is no entry. */
  | (Sender & { readonly is: 'voice' | 'edited' | 'secondhand' | 'unread' })
  | { readonly is: 'group'; readonly chat: number }
  | { readonly is: 'nothing' };

export type Personal = Extract<Incoming, Sender>;

/** The kinds of updates that are asked of the service. */
export const ALLOWED_UPDATES = ['message', 'edited_message', 'my_chat_member'] as const;

export function readUpdate({ message, edited_message, my_chat_member }: Update): Incoming {
  if (my_chat_member !== undefined) {
    const { chat, new_chat_member: now } = my_chat_member;
    const isIn = now.status === 'member' || now.status === 'administrator';
    return isIn && chat.type !== 'private' ? { is: 'group', chat: chat.id } : { is: 'nothing' };
  }
  const posted = message ?? edited_message;
  if (posted === undefined) return { is: 'nothing' };
  if (posted.chat.type !== 'private') return { is: 'group', chat: posted.chat.id };
  return readPrivate(posted, message === undefined);
}

function readPrivate(message: Message, isEdited: boolean): Incoming {
  const { from, chat } = message;
  if (from === undefined || from.is_bot) return { is: 'nothing' };
  const at = new Date(message.date * 1000).toISOString();
  const sender: Sender = { chat: chat.id, person: from.id, name: nameOf(from), at };
  if (isEdited) return { is: 'edited', ...sender };
  if (isSecondhand(message)) return { is: 'secondhand', ...sender };
  if (message.voice !== undefined) return { is: 'voice', ...sender };
  if (message.text === undefined) return { is: 'unread', ...sender };
  return { is: 'text', ...sender, message: message.message_id, text: message.text };
}

const isSecondhand = ({ forward_origin, via_bot, sender_chat }: Message): boolean =>
  forward_origin !== undefined || via_bot !== undefined || sender_chat !== undefined;

const LONGEST_NAME = 32;

/** For the eye only. What turns or hides text is left out. */
function nameOf({ first_name, id }: User): string {
  const plain = first_name.replace(/[\p{C}\p{Z}]+/gu, ' ').trim();
  return plain === '' ? String(id) : Array.from(plain).slice(0, LONGEST_NAME).join('');
}

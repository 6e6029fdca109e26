// Calls to the service, and what their failure means: above all whether the call may have taken effect.
import { Api, GrammyError, HttpError, InputFile } from 'grammy';
import type { InlineKeyboardMarkup, ReactionTypeEmoji } from 'grammy/types';
import type { Letter } from '../../app/ports/mailbox.ts';
import { backoffMs, type Pace } from './pace.ts';

export interface Service {
  readonly token: string;
  /** Another server than the official one. */
  readonly apiRoot?: string;
}

/** Without a limit of its own a client waits for minutes at a server that says nothing. */
export const newApi = ({ token, apiRoot }: Service, timeoutSeconds: number): Api =>
  new Api(token, {
    fetch: globalThis.fetch,
    timeoutSeconds,
    ...(apiRoot === undefined ? {} : { apiRoot }),
  });

export const pollTimeout = ({ pollSeconds, callSeconds }: Pace): number => pollSeconds + callSeconds;

export type Trouble =
  /** Not carried out; the service says when to come back. */
  | { readonly is: 'tooMany'; readonly seconds: number }
  /** Not carried out, and nothing is wrong with the call. */
  | { readonly is: 'unreached' | 'refusedToken' }
  /** Never will be carried out. */
  | { readonly is: 'impossible' }
  /** There is nothing left to do. */
  | { readonly is: 'done' }
  /** The message that was to be edited is no more. */
  | { readonly is: 'gone' }
  /** The group has another number now. */
  | { readonly is: 'moved'; readonly to: number }
  /** It may have been carried out. */
  | { readonly is: 'unknown' };

export function troubleOf(error: unknown): Trouble {
  if (error instanceof GrammyError) return refusalOf(error);
  return { is: error instanceof HttpError && isUnsent(error.error) ? 'unreached' : 'unknown' };
}

function refusalOf({ error_code: code, parameters, description }: GrammyError): Trouble {
  if (code === 429) return { is: 'tooMany', seconds: parameters.retry_after ?? 1 };
  // 404: the service knows no bot of that token.
  if (code === 401 || code === 404) return { is: 'refusedToken' };
  if (parameters.migrate_to_chat_id !== undefined) return { is: 'moved', to: parameters.migrate_to_chat_id };
  if (/message is not modified/i.test(description)) return { is: 'done' };
  if (/message to edit not found|message can't be edited/i.test(description)) return { is: 'gone' };
  return { is: code >= 400 && code < 500 ? 'impossible' : 'unknown' };
}

/** How long to leave the service alone after so many failures in a row. */
export function waitMs(pace: Pace, error: unknown, failures: number): number {
  const trouble = troubleOf(error);
  return trouble.is === 'tooMany' ? trouble.seconds * 1000 : backoffMs(pace, failures);
}

/** No connection came about, so that nothing was said. */
const UNSENT = [
  'ECONNREFUSED',
  'ENOTFOUND',
  'EAI_AGAIN',
  'EHOSTUNREACH',
  'ENETUNREACH',
  'UND_ERR_CONNECT_TIMEOUT',
];

function isUnsent(error: unknown): boolean {
  if (!(error instanceof Error)) return false;
  const code = 'code' in error ? error.code : undefined;
  return (typeof code === 'string' && UNSENT.includes(code)) || isUnsent(error.cause);
}

/** What may be logged of an error: no address (it holds the token), no payload (it holds words of people). */
export function traceOf(error: unknown): Readonly<Record<string, string | number | undefined>> {
  if (error instanceof GrammyError)
    return { error: error.name, code: error.error_code, method: error.method };
  if (!(error instanceof Error)) return { error: typeof error };
  const at = /^\s+at .*$/m.exec(error.stack ?? '')?.[0].trim();
  return { error: error.name, at };
}

/** Without a parse mode, so that no text can be taken for markup. Returns the number of a message that was sent. */
export async function sendLetter(api: Api, letter: Letter): Promise<number | undefined> {
  const { kind, chat, text, about, press, stands } = letter;
  switch (kind) {
    case 'message':
      return sendMessage(api, letter);
    case 'file':
      await sendFile(api, letter);
      return undefined;
    case 'card':
      if (stands === undefined) return sendMessage(api, letter);
      await api.editMessageText(chat, stands, text, { ...keyboardOf(letter), ...PLAIN });
      return undefined;
    case 'reaction':
      if (about !== undefined)
        await api.setMessageReaction(chat, about, [{ type: 'emoji', emoji: text as Emoji }]);
      return undefined;
    case 'toast':
      if (press !== undefined) await api.answerCallbackQuery(press, text === '' ? {} : { text });
      return undefined;
    case 'bare':
      if (about !== undefined) await api.editMessageReplyMarkup(chat, about, {});
      return undefined;
    case 'leave':
      await api.leaveChat(chat);
      return undefined;
  }
}

/** The service takes no longer one. */
const LONGEST_CAPTION = 1024;

type Emoji = ReactionTypeEmoji['emoji'];

const PLAIN = { link_preview_options: { is_disabled: true } } as const;

/** Silent, but for alarms: a kitchen is loud enough. */
async function sendMessage(api: Api, letter: Letter): Promise<number> {
  const { chat, text, about, alarm } = letter;
  const answers =
    about === undefined ? {} : { reply_parameters: { message_id: about, allow_sending_without_reply: true } };
  const options = { disable_notification: alarm !== true, ...PLAIN, ...keyboardOf(letter), ...answers };
  return (await api.sendMessage(chat, text, options)).message_id;
}

async function sendFile(api: Api, letter: Letter): Promise<void> {
  const { chat, text, file } = letter;
  if (file === undefined) return;
  const sent = new InputFile(file.bytes, file.name);
  const options = {
    caption: text.slice(0, LONGEST_CAPTION),
    disable_notification: true,
    ...keyboardOf(letter),
  };
  if (file.type === 'image/png') await api.sendPhoto(chat, sent, options);
  else await api.sendDocument(chat, sent, options);
}

const keyboardOf = ({ buttons = [] }: Letter): { reply_markup?: InlineKeyboardMarkup } =>
  buttons.length === 0
    ? {}
    : {
        reply_markup: {
          inline_keyboard: buttons.map((row) =>
            row.map(({ label, nonce }) => ({ text: label, callback_data: nonce })),
          ),
        },
      };

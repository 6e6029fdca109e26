// The methods by name. What our bot never calls is not there and answers 404, as an unknown method does.
import type { Params } from '../http/params.ts';
import { getUpdates } from '../updates/polling.ts';
import type { World } from '../world/world.ts';
import { answerCallbackQuery } from './callbacks.ts';
import { getChat, getChatMember, leaveChat, sendChatAction } from './chats.ts';
import { deleteMyCommands, getMyCommands, setMyCommands } from './commands.ts';
import { getFile, sendDocument, sendPhoto, sendVoice } from './media.ts';
import { deleteMessage, editMessageReplyMarkup, editMessageText, sendMessage } from './messages.ts';
import { setMessageReaction } from './reactions.ts';
import { deleteWebhook, getWebhookInfo, setWebhook } from './webhooks.ts';

/** `gone` is aborted when the caller hangs up. */
type Method = (world: World, params: Params, gone: AbortSignal) => unknown;

const METHODS: Readonly<Record<string, Method>> = {
  getMe: ({ bot }) => bot,
  getUpdates,
  setWebhook,
  deleteWebhook,
  getWebhookInfo,
  sendMessage,
  editMessageText,
  editMessageReplyMarkup,
  deleteMessage,
  setMessageReaction,
  answerCallbackQuery,
  getFile,
  sendVoice,
  sendPhoto,
  sendDocument,
  sendChatAction,
  getChat,
  getChatMember,
  leaveChat,
  setMyCommands,
  getMyCommands,
  deleteMyCommands,
};

/** Documented: names of methods are not case-sensitive. */
const BY_NAME = new Map(Object.entries(METHODS).map(([name, method]) => [name.toLowerCase(), method]));

export const methodNamed = (name: string): Method | undefined => BY_NAME.get(name.toLowerCase());

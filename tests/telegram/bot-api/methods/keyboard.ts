// reply_markup: an inline keyboard within the documented limits. Other kinds are taken and not kept.
import type { InlineKeyboardButton, InlineKeyboardMarkup } from 'grammy/types';
import { isRecord, structure, type Params } from '../http/params.ts';
import { badRequest } from '../refusal.ts';

const MOST_BUTTONS = 100;
const MOST_DATA_BYTES = 64;
const OTHER_KINDS = ['keyboard', 'remove_keyboard', 'force_reply'];
/** What a button may do besides calling back. */
const ACTIONS = ['url', 'login_url', 'web_app', 'switch_inline_query', 'copy_text', 'pay'];

/** Undefined where there is none: an empty keyboard is none. */
export function readKeyboard(params: Params, inlineOnly: boolean): InlineKeyboardMarkup | undefined {
  const markup = structure(params, 'reply_markup');
  if (markup === undefined) return undefined;
  if (!isRecord(markup)) throw badRequest('object expected as reply markup');
  const rows = markup['inline_keyboard'];
  if (rows === undefined) {
    if (inlineOnly) throw badRequest('inline keyboard expected');
    if (!OTHER_KINDS.some((kind) => kind in markup)) throw badRequest('object expected as reply markup');
    return undefined;
  }
  return keyboardOf(rows);
}

function keyboardOf(rows: unknown): InlineKeyboardMarkup | undefined {
  if (!Array.isArray(rows))
    throw badRequest('can\'t parse inline keyboard: field "inline_keyboard" must be of type Array');
  const kept = rows.map(rowOf).filter((row) => row.length > 0);
  if (kept.flat().length > MOST_BUTTONS) throw badRequest('reply markup is too long');
  return kept.length === 0 ? undefined : { inline_keyboard: kept };
}

function rowOf(row: unknown): InlineKeyboardButton[] {
  if (!Array.isArray(row)) throw cannotParse('expected an Array of Arrays');
  return row.map(buttonOf);
}

function buttonOf(button: unknown): InlineKeyboardButton {
  if (!isRecord(button) || typeof button['text'] !== 'string')
    throw cannotParse('field "text" must be of type String');
  if (button['text'].trim() === '') throw cannotParse('text must be non-empty');
  const data = button['callback_data'];
  if (data === undefined && !ACTIONS.some((action) => action in button))
    throw cannotParse('text buttons are unallowed in the inline keyboard');
  if (data !== undefined && !isData(data)) throw badRequest('BUTTON_DATA_INVALID');
  return button as unknown as InlineKeyboardButton;
}

const isData = (data: unknown): boolean =>
  typeof data === 'string' && data !== '' && Buffer.byteLength(data) <= MOST_DATA_BYTES;

const cannotParse = (why: string): Error => badRequest(`can't parse inline keyboard button: ${why}`);

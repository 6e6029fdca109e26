// answerCallbackQuery: once, and not too late.
import { flag, text, type Params } from '../http/params.ts';
import { badRequest } from '../refusal.ts';
import { nowMs, type World } from '../world/world.ts';

const LONGEST_ANSWER = 200;

export function answerCallbackQuery(world: World, params: Params): true {
  const press = world.presses.get(text(params, 'callback_query_id') ?? '');
  const oldestMs = nowMs(world) - world.options.pressLifetimeSeconds * 1000;
  if (press === undefined || press.answer !== undefined || press.atMs < oldestMs)
    throw badRequest('query is too old and response timeout expired or query ID is invalid');
  const shown = text(params, 'text') ?? '';
  if (shown.length > LONGEST_ANSWER) throw badRequest('MESSAGE_TOO_LONG');
  press.answer = { text: shown, alert: flag(params, 'show_alert') };
  return true;
}

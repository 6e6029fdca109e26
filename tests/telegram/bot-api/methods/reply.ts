// What a message of the bot answers to: reply_parameters, or the older reply_to_message_id.
import type { Message } from 'grammy/types';
import { flag, integer, isRecord, structure, type Params } from '../http/params.ts';
import { badRequest } from '../refusal.ts';
import { quoted, standing } from '../world/messages.ts';
import type { Room } from '../world/world.ts';

export function readReply(room: Room, params: Params): Message['reply_to_message'] {
  const given = structure(params, 'reply_parameters');
  if (given !== undefined && !isRecord(given)) throw badRequest("can't parse reply parameters JSON object");
  const asked = given ?? params;
  const id = integer(asked, given === undefined ? 'reply_to_message_id' : 'message_id');
  if (id === undefined) return undefined;
  const found = standing(room, id);
  if (found !== undefined) return quoted(found);
  if (flag(asked, 'allow_sending_without_reply')) return undefined;
  throw badRequest('message to be replied not found');
}

// setMessageReaction: one of the documented emoji, or none.
import { integer, isRecord, list, type Params } from '../http/params.ts';
import { badRequest } from '../refusal.ts';
import { standing } from '../world/messages.ts';
import { openRoomOf } from '../world/rooms.ts';
import type { World } from '../world/world.ts';

/** The list of the documentation (ReactionTypeEmoji). A tick and a cross are not among them. */
const ALLOWED = new Set(
  (
    '👍 👎 ❤ 🔥 🥰 👏 😁 🤔 🤯 😱 🤬 😢 🎉 🤩 🤮 💩 🙏 👌 🕊 🤡 🥱 🥴 😍 🐳 ❤‍🔥 🌚 🌭 💯 🤣 ⚡ 🍌 🏆 💔 🤨 😐 ' +
    '🍓 🍾 💋 🖕 😈 😴 😭 🤓 👻 👨‍💻 👀 🎃 🙈 😇 😨 🤝 ✍ 🤗 🫡 🎅 🎄 ☃ 💅 🤪 🗿 🆒 💘 🙉 🦄 😘 💊 🙊 😎 👾 🤷‍♂ 🤷 🤷‍♀ 😡'
  ).split(' '),
);

export function setMessageReaction(world: World, params: Params): true {
  const room = openRoomOf(world, params);
  const reactions = (list(params, 'reaction') ?? []).map(emojiOf);
  const posted = standing(room, integer(params, 'message_id'));
  if (posted === undefined) throw badRequest('message to react not found');
  // Documented: a bot sets at most one.
  if (reactions.length > 1) throw badRequest('REACTIONS_TOO_MANY');
  const [emoji] = reactions;
  if (emoji === undefined) delete posted.reaction;
  else posted.reaction = emoji;
  return true;
}

function emojiOf(reaction: unknown): string {
  const emoji = isRecord(reaction) && reaction['type'] === 'emoji' ? reaction['emoji'] : undefined;
  if (typeof emoji !== 'string' || !ALLOWED.has(emoji)) throw badRequest('REACTION_INVALID');
  return emoji;
}

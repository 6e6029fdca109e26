// The list of commands that clients show, by scope and language.
import type { BotCommand } from 'grammy/types';
import { isRecord, list, structure, text, type Params } from '../http/params.ts';
import { badRequest } from '../refusal.ts';
import type { World } from '../world/world.ts';

const MOST_COMMANDS = 100;

export function setMyCommands(world: World, params: Params): true {
  const commands = (list(params, 'commands') ?? []).map(commandOf);
  if (commands.length > MOST_COMMANDS) throw badRequest('BOT_COMMANDS_TOO_MUCH');
  world.commands.set(keyOf(params), commands);
  return true;
}

export const getMyCommands = (world: World, params: Params): readonly BotCommand[] =>
  world.commands.get(keyOf(params)) ?? [];

export function deleteMyCommands(world: World, params: Params): true {
  world.commands.delete(keyOf(params));
  return true;
}

function commandOf(given: unknown): BotCommand {
  if (!isRecord(given)) throw badRequest("can't parse BotCommand");
  const command = text(given, 'command') ?? '';
  const description = text(given, 'description') ?? '';
  if (!/^[a-z0-9_]{1,32}$/.test(command)) throw badRequest('BOT_COMMAND_INVALID');
  if (description === '' || description.length > 256) throw badRequest('BOT_COMMAND_DESCRIPTION_INVALID');
  return { command, description };
}

const keyOf = (params: Params): string =>
  `${JSON.stringify(structure(params, 'scope') ?? { type: 'default' })} ${text(params, 'language_code') ?? ''}`;

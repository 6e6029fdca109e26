// All that the service knows: people, chats, messages, files, presses, updates that wait. Mutable, in memory.
import type { BotCommand, Chat, Message, User, UserFromGetMe } from 'grammy/types';
import { newFaults, type Faults } from '../faults/faults.ts';
import { newLog, type Log } from '../log.ts';
import { newQueue, type Queue } from '../updates/queue.ts';
import type { Webhook } from '../updates/webhook.ts';
import type { Options } from './options.ts';

/** What the bot is in a chat. In a private chat `kicked` is blocked, and `never` is a person who did not start it. */
export type Standing = 'never' | 'member' | 'administrator' | 'restricted' | 'left' | 'kicked';

export type MemberStatus = 'creator' | 'administrator' | 'member';

export interface Posted {
  /** Replaced by each edit, never changed in place: the log holds on to what was answered. */
  message: Message;
  readonly fromBot: boolean;
  readonly silent: boolean;
  reaction?: string;
  deleted: boolean;
}

export interface Room {
  chat: Chat;
  standing: Standing;
  readonly members: Map<number, MemberStatus>;
  readonly posted: Map<number, Posted>;
  /** Supergroups number their own messages; private chats and basic groups share the counter of the account. */
  readonly messageIds: { last: number };
  movedTo?: number;
  deactivated?: true;
}

export interface StoredFile {
  readonly file_id: string;
  readonly file_unique_id: string;
  readonly bytes: Uint8Array;
  /** As the service states it: a test may claim more than there is. */
  readonly file_size: number;
  readonly path: string;
  linkEndsMs: number;
}

export interface Pressed {
  readonly id: string;
  readonly user: number;
  readonly data: string;
  readonly atMs: number;
  answer?: { readonly text: string; readonly alert: boolean };
}

export interface World {
  readonly options: Options;
  readonly bot: UserFromGetMe;
  readonly users: Map<number, User>;
  readonly rooms: Map<number, Room>;
  readonly files: Map<string, StoredFile>;
  readonly presses: Map<string, Pressed>;
  readonly commands: Map<string, readonly BotCommand[]>;
  readonly queue: Queue;
  readonly faults: Faults;
  readonly log: Log;
  /** When each chat was written to or edited in, for the limits. */
  readonly spent: Map<string, number[]>;
  readonly accountMessageIds: { last: number };
  readonly numbers: { last: number };
  webhook?: Webhook;
  /** How far a test has put the clock of the service forward. */
  aheadMs: number;
  isOut: boolean;
}

export function newWorld(options: Options): World {
  return {
    options,
    bot: botOf(options),
    users: new Map(),
    rooms: new Map(),
    files: new Map(),
    presses: new Map(),
    commands: new Map(),
    queue: newQueue(options.firstUpdateId),
    faults: newFaults(),
    log: newLog(),
    spent: new Map(),
    accountMessageIds: { last: 0 },
    numbers: { last: 0 },
    aheadMs: 0,
    isOut: false,
  };
}

/** Shown in messages without the flags that only getMe gives. */
export const botUser = ({ bot }: World): User => ({
  id: bot.id,
  is_bot: true,
  first_name: bot.first_name,
  username: bot.username,
});

export const nowMs = (world: World): number => Date.now() + world.aheadMs;

export const nowSeconds = (world: World): number => Math.floor(nowMs(world) / 1000);

/** A number that this server has not given before. */
export function nextNumber(world: World): number {
  world.numbers.last += 1;
  return world.numbers.last;
}

function botOf(options: Options): UserFromGetMe {
  return {
    id: Number(options.token.split(':')[0]),
    is_bot: true,
    first_name: options.botName,
    username: options.botUsername,
    can_join_groups: true,
    can_read_all_group_messages: options.readsAllGroupMessages,
    supports_inline_queries: false,
    can_connect_to_business: false,
    has_main_web_app: false,
    has_topics_enabled: false,
    allows_users_to_create_topics: false,
    can_manage_bots: false,
    supports_join_request_queries: false,
  };
}

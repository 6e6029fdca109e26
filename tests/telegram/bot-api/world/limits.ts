// The limits on how often a bot writes, as sliding windows. A refused call does not count.
import { tooManyRequests } from '../refusal.ts';
import { nowMs, type Room, type World } from './world.ts';

interface Window {
  readonly key: string;
  readonly most: number | undefined;
  readonly spanMs: number;
}

/** Counts one message or edit against the chat, or throws 429 with the seconds until there is room. */
export function spend(world: World, room: Room, what: 'send' | 'edit'): void {
  const now = nowMs(world);
  const windows = windowsOf(world, room, what).filter(({ most }) => most !== undefined);
  const waits = windows.map((window) => waitMs(world, window, now));
  const longest = Math.max(0, ...waits);
  if (longest > 0) throw tooManyRequests(Math.ceil(longest / 1000));
  for (const { key } of windows) world.spent.get(key)?.push(now);
}

function windowsOf({ options: { limits } }: World, { chat }: Room, what: 'send' | 'edit'): readonly Window[] {
  const isGroup = chat.type === 'group' || chat.type === 'supergroup';
  const all = { key: 'all', most: limits.allPerSecond, spanMs: 1000 };
  if (what === 'edit')
    return isGroup
      ? [all, { key: `edit ${chat.id}`, most: limits.groupEditsPerMinute, spanMs: 60_000 }]
      : [all];
  const second = { key: `second ${chat.id}`, most: limits.chatPerSecond, spanMs: 1000 };
  const minute = { key: `minute ${chat.id}`, most: limits.groupPerMinute, spanMs: 60_000 };
  return isGroup ? [all, second, minute] : [all, second];
}

function waitMs(world: World, { key, most = Infinity, spanMs }: Window, now: number): number {
  const recent = (world.spent.get(key) ?? []).filter((at) => at > now - spanMs);
  world.spent.set(key, recent);
  const frees = recent[recent.length - most];
  return frees === undefined ? 0 : frees + spanMs - now;
}

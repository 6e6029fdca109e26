// Entities that the service finds by itself, in the messages of people and of bots.
import type { MessageEntity } from 'grammy/types';

type Found = 'bot_command' | 'mention' | 'hashtag' | 'url';

const PATTERNS: readonly (readonly [Found, RegExp])[] = [
  ['bot_command', /(?<![\w/@])\/[a-z0-9_]{1,32}(?:@\w{3,32})?(?![\w/])/gi],
  ['mention', /(?<![\w/])@[a-z]\w{3,31}\b/gi],
  ['hashtag', /(?<![\w#])#[\p{L}_]\w{0,255}/giu],
  ['url', /\bhttps?:\/\/[^\s<>"]+/gi],
];

/** Those that lie outside of what is already marked. */
export function detected(text: string, marked: readonly MessageEntity[]): readonly MessageEntity[] {
  const found = PATTERNS.flatMap(([type, pattern]) =>
    Array.from(text.matchAll(pattern), (at) => ({ type, offset: at.index, length: at[0].length })),
  );
  const blocking = marked.filter(({ type }) => ['code', 'pre', 'text_link'].includes(type));
  return found.filter((entity) => !blocking.some((other) => overlap(entity, other)));
}

interface Span {
  readonly offset: number;
  readonly length: number;
}

const overlap = (one: Span, other: Span): boolean =>
  one.offset < other.offset + other.length && other.offset < one.offset + one.length;

// What somebody is called, by those who read: a chat may know people by numbers.
import { list, name, type ReplyValue, say } from '../core/reply.ts';
import type { Scene } from './intent.ts';

export function called({ people }: Pick<Scene, 'people'>, speaker: string): ReplyValue {
  if (people === undefined) return name(speaker);
  const known = people.get(speaker);
  return known === undefined ? list([say('somebody-gone')]) : name(known);
}

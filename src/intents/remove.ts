// "drop the fat": a part, or all that was said of portions, is not counted after all.
import type { EntryOf } from '../core/entry.ts';
import { name, say } from '../core/reply.ts';
import { PORTIONS, type Test } from '../core/test.ts';
import { figuresOf, ofTest, overweightAsk, toGo } from './card.ts';
import { type Intent, recorded, refused, type Response, type Scene } from './intent.ts';
import { withTest } from './route.ts';

export const remove: Intent<'remove'> = {
  slots: ['part', 'item'],
  decide: (scene, entry: EntryOf<'remove'>) =>
    withTest(scene, entry, (test) => {
      if (!isThere(test, entry.part))
        return refused(say('not-weighed', { part: name(entry.part), item: name(test.item) }));
      return recorded(
        [{ test: test.id, item: test.item, fact: { type: 'removed', part: entry.part } }],
        (now) => respond(now, test, entry.part),
      );
    }),
};

function isThere({ parts, portions }: Test, part: string): boolean {
  if (part === PORTIONS)
    return portions.batches.length > 0 || portions.list.length > 0 || portions.grams !== undefined;
  return parts.some((each) => each.part === part);
}

function respond(scene: Scene, { id }: Test, part: string): Response {
  const test = scene.kitchen.tests.get(id);
  if (test === undefined) return { say: [] };
  const removed = say('removed', { part: name(part) });
  return {
    say: [ofTest(scene, test, removed, toGo(figuresOf(scene, test)))],
    ask: overweightAsk(scene, test),
  };
}

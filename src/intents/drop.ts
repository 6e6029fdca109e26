// "forget the ribeye test": a whole test is thrown away. An undo brings it back.
import type { EntryOf } from '../core/entry.ts';
import { name, say } from '../core/reply.ts';
import { type Intent, recorded } from './intent.ts';
import { withTest } from './route.ts';

export const drop: Intent<'drop'> = {
  slots: ['item'],
  decide: (scene, entry: EntryOf<'drop'>) =>
    withTest(scene, entry, (test) =>
      recorded([{ test: test.id, item: test.item, fact: { type: 'dropped' } }], () => ({
        say: [say('dropped', { item: name(test.item) })],
      })),
    ),
};

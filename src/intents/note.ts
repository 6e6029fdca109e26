// "note packer left bone on": words kept with the test, as they are.
import type { EntryOf } from '../core/entry.ts';
import { name, say } from '../core/reply.ts';
import { answered, type Intent, recorded } from './intent.ts';
import { openTestFor } from './route.ts';

export const note: Intent<'note'> = {
  slots: ['text'],
  decide: (scene, { text }: EntryOf<'note'>) => {
    const test = openTestFor(scene, undefined);
    const read =
      test === undefined ? say('noted', { text }) : say('noted-with', { text, item: name(test.item) });
    if (test?.notes.includes(text) === true) return answered(read);
    return recorded([{ test: test?.id, item: test?.item, fact: { type: 'noted', text } }], () => ({
      say: [read],
    }));
  },
};

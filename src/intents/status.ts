// "where are we": the test at a glance.
import type { EntryOf } from '../core/entry.ts';
import { openTests } from '../core/kitchen.ts';
import type { Label } from '../core/label.ts';
import { list, name, type Reply, say } from '../core/reply.ts';
import { cardLines, heardBy } from './card.ts';
import { answered, type Intent, refused } from './intent.ts';
import { openTestFor } from './route.ts';
import { sourceWords } from './safety-words.ts';

export const status: Intent<'status'> = {
  slots: ['item'],
  decide: (scene, entry: EntryOf<'status'>) => {
    const test = openTestFor(scene, entry.item);
    if (test !== undefined)
      return answered(...cardLines(scene, test), ...labelLines(test.labels), ...heardBy(scene));
    const item = entry.item ?? scene.carried;
    if (item !== undefined) return refused(say('no-open-test', { item: name(item) }));
    const open = openTests(scene.kitchen);
    return open.length === 0
      ? refused(say('nothing-open'))
      : answered(...open.flatMap((each) => cardLines(scene, each)), ...heardBy(scene));
  },
};

const labelLines = (labels: readonly Label[]): readonly Reply[] =>
  labels.length === 0 ? [] : [say('labels', { of: list(labels.map(sourceWords), 'semicolon') })];

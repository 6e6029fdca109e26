// "that was striploin, not ribeye": a whole test is of another cut.
import type { EntryOf } from '../core/entry.ts';
import { name, say } from '../core/reply.ts';
import { standingFacts, type Test } from '../core/test.ts';
import { figuresOf, receivedLine } from './card.ts';
import { answered, type Decision, type Intent, recorded } from './intent.ts';
import { withTest } from './route.ts';

export const rename: Intent<'rename'> = {
  slots: ['item', 'newItem'],
  decide: (scene, entry: EntryOf<'rename'>) =>
    withTest(scene, entry, (test) => renameTest(test, entry.newItem)),
};

/** What was received is corrected: its price goes to the new name's memory too. */
export function renameTest(test: Test, item: string): Decision {
  if (test.item === item) return answered(say('already-named', { item: name(item) }));
  const opening = standingFacts(test.facts).find(({ fact }) => fact.type === 'received');
  if (opening?.fact.type !== 'received') return { is: 'ignored' };
  const fact = { type: 'corrected', target: opening.recorded.entry, by: { ...opening.fact, item } } as const;
  return recorded([{ test: test.id, item, fact }], (now) => {
    const renamed = now.kitchen.tests.get(test.id);
    return {
      say:
        renamed === undefined
          ? []
          : [
              say('renamed', { before: name(test.item), item: name(item) }),
              receivedLine(renamed, figuresOf(now, renamed)),
            ],
    };
  });
}

// "done": closes the test and gives its result. What would make the result doubtful is asked about once.
import { decimal } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import { list, name, percent, say, type Reply, weight } from '../core/reply.ts';
import type { Test } from '../core/test.ts';
import { figuresOf } from './card.ts';
import { confirm, type Intent, recorded, type Scene } from './intent.ts';
import { resultLines } from './result.ts';
import { withTest } from './route.ts';

/** The share of the piece that may be missing, or too much, before it is asked about. */
const UNACCOUNTED_PCT = decimal('5');

export const finish: Intent<'finish'> = {
  slots: ['item'],
  decide: (scene, entry: EntryOf<'finish'>) =>
    withTest(scene, entry, (test) => {
      const doubts = doubtsOf(scene, test);
      if (doubts.length > 0 && entry.sure !== true) {
        const asked = say('ask-finish', { item: name(test.item), doubts: list(doubts) });
        return confirm(asked, entry);
      }
      const flagged = figuresOf(scene, test).overweight;
      return recorded([{ test: test.id, item: test.item, fact: { type: 'closed', flagged } }], (now) => {
        const closed = now.kitchen.tests.get(test.id);
        return { say: closed === undefined ? [] : resultLines(now, closed) };
      });
    }),
};

function doubtsOf(scene: Scene, test: Test): readonly Reply[] {
  const { portions, overweight, unaccountedGrams, unaccountedPct } = figuresOf(scene, test);
  const doubts: Reply[] = [];
  if (portions === undefined) doubts.push(say('doubt-no-portions'));
  if (overweight) doubts.push(say('doubt-overweight', { over: weight(unaccountedGrams.negated()) }));
  else if (portions !== undefined && unaccountedPct.abs().gt(UNACCOUNTED_PCT))
    doubts.push(
      say('doubt-unaccounted', {
        weight: weight(unaccountedGrams.abs()),
        share: percent(unaccountedPct.abs()),
      }),
    );
  return doubts;
}

// "ribeye yield by supplier", "by cutter": the closed tests of an item told apart, and whether that tells anything yet.
import type { EntryOf } from '../core/entry.ts';
import { type Pool, poolFigures } from '../core/pool.ts';
import { groupsOf, isSplitAlike } from '../core/pools.ts';
import { name, number, percent, type Reply, type ReplyValue, say } from '../core/reply.ts';
import { ENOUGH_TESTS, yieldInterval } from '../core/sureness.ts';
import { line } from './card.ts';
import { called } from './called.ts';
import { answered, type Intent, refused } from './intent.ts';
import { withItem } from './route.ts';

type Group = readonly [name: string, pool: Pool];

export const askYieldBy: Intent<'askYieldBy'> = {
  slots: ['item', 'by'],
  decide: (scene, entry: EntryOf<'askYieldBy'>) =>
    withItem(scene, entry, (item) => {
      const groups = groupsOf(scene.kitchen, item, entry.by);
      if (groups.length === 0)
        return refused(
          say(entry.by === 'supplier' ? 'no-supplier-tests' : 'no-tests-yet', { item: name(item) }),
        );
      const lines = groups.map(([who, pool]) =>
        groupLine(entry.by === 'cutter' ? called(scene, who) : who, pool),
      );
      const alike = groups.length > 1 && isSplitAlike(scene.kitchen, item) ? [say('split-alike')] : [];
      return answered(...lines, ...sureness(groups), ...alike);
    }),
};

function groupLine(who: ReplyValue, pool: Pool): Reply {
  const { tests, yieldPct, yieldDeviationPct } = poolFigures(pool, {}) ?? {
    tests: 0,
    yieldPct: pool.portionGrams,
  };
  const spread =
    yieldDeviationPct === undefined
      ? [say('one-test')]
      : [say('yield-spread', { points: number(yieldDeviationPct, 1) })];
  return line(say('yield-of', { item: who, share: percent(yieldPct), tests }), ...spread);
}

/** A difference between groups means something only where each has its tests, and their 90 % intervals lie apart. */
function sureness(groups: readonly Group[]): readonly Reply[] {
  if (groups.length < 2) return [];
  if (groups.some(([, { tests }]) => tests < ENOUGH_TESTS))
    return [say('too-few-to-tell', { tests: ENOUGH_TESTS })];
  const intervals = groups.flatMap(([, pool]) => yieldInterval(pool) ?? []);
  const lowest = intervals.reduce((one, other) => (other.high.lt(one.high) ? other : one));
  const highest = intervals.reduce((one, other) => (other.low.gt(one.low) ? other : one));
  return [say(highest.low.gt(lowest.high) ? 'difference-is-real' : 'difference-may-be-chance')];
}

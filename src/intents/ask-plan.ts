// "how many 14s out of 11.3": whole portions of a size, what is over, and the sizes at which nothing would be.
import type { EntryOf } from '../core/entry.ts';
import { evenSizes, portionsFrom } from '../core/order.ts';
import type { Grams } from '../core/quantity.ts';
import { list, type Reply, say, size, weight } from '../core/reply.ts';
import { figuresOf } from './card.ts';
import { answered, type Decision, type Intent, refused } from './intent.ts';
import { withTest } from './route.ts';

export const askPlan: Intent<'askPlan'> = {
  slots: ['weight', 'each', 'item'],
  decide: (scene, entry: EntryOf<'askPlan'>) => {
    if (entry.weight !== undefined) return plan(entry.weight, entry.each);
    return withTest(scene, entry, (test) => {
      const left = figuresOf(scene, test).unaccountedGrams;
      return left.gt(0) ? plan(left, entry.each) : refused(say('plan-nothing-left'));
    });
  },
};

function plan(grams: Grams, each: Grams): Decision {
  const count = portionsFrom(grams, each);
  const over = grams.minus(each.times(count));
  return answered(
    say('plan', { count, size: size(each), weight: weight(grams), over: size(over) }),
    ...(over.isZero() ? [] : [evenLine(grams, each)]),
  );
}

function evenLine(grams: Grams, each: Grams): Reply {
  const sizes = evenSizes(grams, each).map((even) =>
    say('plan-even-size', { count: even.count, size: size(even.eachGrams) }),
  );
  return say('plan-even', { sizes: list(sizes) });
}

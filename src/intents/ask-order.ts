// "how much ribeye for 40 16-ounce": what to buy, rounded up, from the pooled yield.
import { roundUp } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import { poolOf } from '../core/kitchen.ts';
import { gramsToBuy } from '../core/order.ts';
import { poolFigures } from '../core/pool.ts';
import { fromGrams, type Grams, toGrams } from '../core/quantity.ts';
import { name, percent, type Reply, say, size, weight } from '../core/reply.ts';
import { figuresOf, line } from './card.ts';
import { answered, asks, type Intent, lacking, refused, type Scene } from './intent.ts';
import { withItem } from './route.ts';

export const askOrder: Intent<'askOrder'> = {
  slots: ['item', 'count', 'each'],
  decide: (scene, entry: EntryOf<'askOrder'>) =>
    withItem(scene, entry, (item) => {
      const { count, each } = entry;
      if (each === undefined) return asks(say('ask-order-size', { count }), { wants: lacking({ ...entry, item }, 'each') });
      const known = yieldOf(scene, item);
      if (known === undefined) return refused(say('no-tests-yet', { item: name(item) }));
      const { unit } = scene.kitchen.settings;
      const grams = gramsToBuy({ count, eachGrams: each, ...known });
      const rounded = toGrams(roundUp(fromGrams(grams, unit), 1), unit);
      const args = { item: name(item), weight: weight(rounded), count, size: size(each), share: percent(known.portionGrams.div(known.receivedGrams).times(100)) };
      return answered(line(say('order', args), known.behind));
    }),
};

/** What came of what: over the closed tests, else of the open one so far. */
function yieldOf(scene: Scene, item: string): { receivedGrams: Grams; portionGrams: Grams; behind: Reply } | undefined {
  const pool = poolOf(scene.kitchen, item);
  const pooled = poolFigures(pool, {});
  if (pooled !== undefined) return { ...pool, behind: say('tests-behind', { tests: pooled.tests }) };
  const test = [...scene.kitchen.tests.values()].findLast((each) => each.item === item && each.status === 'open');
  const figure = test && figuresOf(scene, test);
  if (figure?.portions === undefined || figure.overweight) return undefined;
  return { receivedGrams: figure.receivedGrams, portionGrams: figure.portions.grams, behind: say('open-test-only') };
}

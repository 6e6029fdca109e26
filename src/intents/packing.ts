// "packing 15 cents each": what the bag or tray of a portion costs.
import type { EntryOf } from '../core/entry.ts';
import { money, saidMoney, say, sayCost } from '../core/reply.ts';
import type { Test } from '../core/test.ts';
import { figuresOf, ofTest } from './card.ts';
import { loadedCosts } from './labor-words.ts';
import { answered, type Intent, recorded, type Response, type Scene } from './intent.ts';
import { withTest } from './route.ts';

export const packing: Intent<'packing'> = {
  slots: ['costEach', 'item'],
  decide: (scene, entry: EntryOf<'packing'>) =>
    withTest(scene, entry, (test) => {
      if (test.packingEach?.eq(entry.costEach) === true)
        return answered(
          ofTest(
            scene,
            test,
            sayCost('already-packing', { cost: saidMoney(entry.costEach) }, say('packing-noted')),
          ),
        );
      return recorded(
        [{ test: test.id, item: test.item, fact: { type: 'packed', costEach: entry.costEach } }],
        (now) => respondPacking(now, test),
      );
    }),
};

export function respondPacking(scene: Scene, { id }: Test): Response {
  const test = scene.kitchen.tests.get(id);
  if (test?.packingEach === undefined) return { say: [] };
  const figure = figuresOf(scene, test);
  const read = sayCost('packing-each', { cost: saidMoney(test.packingEach) }, say('packing-noted'));
  const { packingCost } = figure;
  const total =
    packingCost === undefined
      ? say('packing-needs-count')
      : sayCost('packing-total', { cost: money(packingCost) });
  return { say: [ofTest(scene, test, read, total, ...loadedCosts(figure))] };
}

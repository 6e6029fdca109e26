// "share the cost": what each product of a piece carries, by what it would bring, beside the by-product method.
import type { EntryOf } from '../core/entry.ts';
import { readyCutOf } from '../core/kitchen.ts';
import { type ByValue, type Product, shareByValue, type SharingGap } from '../core/products.ts';
import { money, name, number, price, type Reply, say, sayCost, weight } from '../core/reply.ts';
import type { Test } from '../core/test.ts';
import { figuresOf } from './card.ts';
import { answered, type Intent, refused, type Scene } from './intent.ts';
import { testAtHand } from './route.ts';

export const askProducts: Intent<'askProducts'> = {
  slots: ['item'],
  costs: true,
  decide: (scene, entry: EntryOf<'askProducts'>) => {
    const test = testAtHand(scene, entry.item, () => true);
    if (test === undefined) return refused(say('nothing-open'));
    const shared = sharedBy(scene, test);
    if (typeof shared === 'string') return refused(say(`not-shared-${shared}`, { item: name(test.item) }));
    return answered(...sharedLines(scene, test, shared));
  },
};

const sharedBy = (scene: Scene, test: Test): ByValue | SharingGap =>
  shareByValue(test, figuresOf(scene, test), readyCutOf(scene.kitchen, test.item)?.perLb);

/** Of a test whose cost can be shared: what each product carries. */
export function productLines(scene: Scene, test: Test): readonly Reply[] {
  const shared = sharedBy(scene, test);
  return typeof shared === 'string' ? [] : sharedLines(scene, test, shared);
}

function sharedLines(scene: Scene, test: Test, { jointCost, products }: ByValue): readonly Reply[] {
  const { costs } = figuresOf(scene, test);
  const residual =
    costs === undefined
      ? []
      : [
          sayCost('by-product-method', {
            cost: price(costs.usableCostPerLb),
            factor: number(costs.costFactor, 3),
          }),
        ];
  return [
    sayCost('cost-by-value', { item: name(test.item), cost: money(jointCost) }),
    ...products.map(productLine),
    ...residual,
  ];
}

const productLine = ({ part, grams, valuePerLb, share, usableCostPerLb, costFactor }: Product): Reply =>
  sayCost('product-share', {
    part: name(part),
    weight: weight(grams),
    value: price(valuePerLb),
    share: money(share),
    cost: price(usableCostPerLb),
    factor: number(costFactor, 3),
  });

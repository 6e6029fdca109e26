// "share the cost": what each product of a piece carries, by what it would bring, beside the by-product method.
import type { EntryOf } from '../core/entry.ts';
import { readyCutOf } from '../core/kitchen.ts';
import { type Product, shareByValue } from '../core/products.ts';
import { money, name, number, price, type Reply, say, sayCost, weight } from '../core/reply.ts';
import { figuresOf } from './card.ts';
import { answered, type Intent, refused } from './intent.ts';
import { testAtHand } from './route.ts';

export const askProducts: Intent<'askProducts'> = {
  slots: ['item'],
  costs: true,
  decide: (scene, entry: EntryOf<'askProducts'>) => {
    const test = testAtHand(scene, entry.item, () => true);
    if (test === undefined) return refused(say('nothing-open'));
    const figure = figuresOf(scene, test);
    const shared = shareByValue(test, figure, readyCutOf(scene.kitchen, test.item)?.perLb);
    if (typeof shared === 'string') return refused(say(`not-shared-${shared}`, { item: name(test.item) }));
    const { costs, portions } = figure;
    const residual =
      costs === undefined || portions === undefined
        ? []
        : [sayCost('by-product-method', { cost: price(costs.usableCostPerLb), factor: number(costs.costFactor, 3) })];
    return answered(sayCost('cost-by-value', { item: name(test.item), cost: money(shared.jointCost) }), ...shared.products.map(productLine), ...residual);
  },
};

const productLine = ({ part, grams, valuePerLb, share, usableCostPerLb, costFactor }: Product): Reply =>
  sayCost('product-share', {
    part: name(part),
    weight: weight(grams),
    value: price(valuePerLb),
    share: money(share),
    cost: price(usableCostPerLb),
    factor: number(costFactor, 3),
  });

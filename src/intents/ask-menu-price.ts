// "menu price at 32 percent": what to charge, so that a portion takes that share of the price.
import { decimal } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import { poolOf, priceOf, sizeOf } from '../core/kitchen.ts';
import { costOf, type Money } from '../core/money.ts';
import { menuPrice } from '../core/order.ts';
import { poolFigures } from '../core/pool.ts';
import type { Grams } from '../core/quantity.ts';
import { money, name, percent, type Reply, say, sayCost, size } from '../core/reply.ts';
import { figuresOf } from './card.ts';
import { answered, asks, type Intent, lacking, refused, type Scene } from './intent.ts';
import { openTestFor, withItem } from './route.ts';

const ALL = decimal('100');

export const askMenuPrice: Intent<'askMenuPrice'> = {
  slots: ['item', 'foodCostPct', 'each'],
  costs: true,
  decide: (scene, entry: EntryOf<'askMenuPrice'>) =>
    withItem(scene, entry, (item) => {
      const { foodCostPct } = entry;
      if (foodCostPct === undefined)
        return asks(say('ask-food-cost', { item: name(item) }), {
          wants: lacking({ ...entry, item }, 'foodCostPct'),
        });
      if (foodCostPct.gt(ALL))
        return asks(say('ask-over-hundred', { share: percent(foodCostPct) }), {
          wants: lacking({ ...entry, item }, 'foodCostPct'),
        });
      const portion = portionOf(scene, item, entry.each);
      if (portion === undefined) return refused(say('no-portion-cost', { item: name(item) }));
      const args = {
        item: name(item),
        price: money(menuPrice(portion.cost, foodCostPct)),
        share: percent(foodCostPct),
        size: size(portion.each),
        cost: money(portion.cost),
      };
      return answered(sayCost('menu-price', args), ...loadedLines(portion));
    }),
};

export interface PortionCost {
  readonly each: Grams;
  /** Of the food alone: that is what a food cost percentage is of. */
  readonly cost: Money;
  readonly loaded: Money;
}

/** A portion of the size that is said or was last cut, at today's price and the pooled yield; else as the open test has it. */
export function portionOf(scene: Scene, item: string, said?: Grams): PortionCost | undefined {
  const test = openTestFor(scene, item);
  const open = test?.item === item ? figuresOf(scene, test) : undefined;
  const each = said ?? sizeOf(scene.kitchen, item) ?? open?.portions?.meanGrams;
  const pooled = poolFigures(poolOf(scene.kitchen, item), {
    pricePerLb: priceOf(scene.kitchen, item, scene.at)?.perLb,
  });
  const costs = pooled?.costs ?? open?.costs;
  if (costs === undefined || each === undefined) return undefined;
  return { each, cost: costOf(each, costs.usableCostPerLb), loaded: costOf(each, costs.loadedCostPerLb) };
}

/** What labour and packing add to it, where there are any. */
export const loadedLines = ({ cost, loaded }: PortionCost): readonly Reply[] =>
  loaded.eq(cost) ? [] : [sayCost('portion-loaded', { cost: money(loaded) })];

// "ribeye at 38 on the menu, what food cost": the share of the menu price that a portion takes.
import type { EntryOf } from '../core/entry.ts';
import { foodCostPct } from '../core/order.ts';
import { money, name, percent, saidMoney, say, sayCost, size } from '../core/reply.ts';
import { loadedLines, portionOf } from './ask-menu-price.ts';
import { answered, type Intent, refused } from './intent.ts';
import { withItem } from './route.ts';

export const askFoodCost: Intent<'askFoodCost'> = {
  slots: ['item', 'priceEach'],
  costs: true,
  decide: (scene, entry: EntryOf<'askFoodCost'>) =>
    withItem(scene, entry, (item) => {
      const portion = portionOf(scene, item);
      if (portion === undefined) return refused(say('no-portion-cost', { item: name(item) }));
      const { priceEach } = entry;
      const share = percent(foodCostPct(portion.cost, priceEach));
      return answered(
        sayCost('food-cost', {
          item: name(item),
          price: saidMoney(priceEach),
          share,
          size: size(portion.each),
          cost: money(portion.cost),
        }),
        ...loadedLines(portion),
      );
    }),
};

// "prices": what is paid for each cut, what a usable pound of it costs, and what it costs ready-cut.
import { poolOf, priceOf, readyCutOf } from '../core/kitchen.ts';
import { poolFigures } from '../core/pool.ts';
import { itemsPriced } from '../core/memory.ts';
import { name, price, type Reply, say, sayCost } from '../core/reply.ts';
import { line } from './card.ts';
import { answered, type Decision, refused, type Scene } from './intent.ts';

/** What fits a phone. */
const ITEMS_SHOWN = 20;

export function allPrices(scene: Scene): Decision {
  const items = itemsPriced(scene.kitchen.memory);
  if (items.length === 0) return refused(say('no-prices'));
  const more = items.length - ITEMS_SHOWN;
  const left = more > 0 ? [say('prices-more', { count: more })] : [];
  return answered(...items.slice(0, ITEMS_SHOWN).map((item) => itemLine(scene, item)), ...left);
}

function itemLine({ kitchen, at }: Scene, item: string): Reply {
  const paid = priceOf(kitchen, item, at);
  const costs = poolFigures(poolOf(kitchen, item), { pricePerLb: paid?.perLb })?.costs;
  const ready = readyCutOf(kitchen, item);
  return line(
    paid === undefined
      ? say('no-price', { item: name(item) })
      : sayCost('list-price', { item: name(item), price: price(paid.perLb) }),
    ...(costs === undefined ? [] : [sayCost('list-usable', { cost: price(costs.usableCostPerLb) })]),
    ...(ready === undefined ? [] : [sayCost('list-ready', { price: price(ready.perLb) })]),
  );
}

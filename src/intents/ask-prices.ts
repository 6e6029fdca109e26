// "ribeye prices": what we pay for an item, by supplier and date, and what it costs ready-cut.
import type { EntryOf } from '../core/entry.ts';
import { priceBookKey, priceKey, readyCutKey } from '../core/memory.ts';
import { recall, recallAll, recallComing, type Recalled } from '../core/recall.ts';
import { date, list, name, price, type Reply, saidPrice, say, sayCost, size } from '../core/reply.ts';
import { line } from './card.ts';
import { answered, type Intent, refused, type Scene } from './intent.ts';
import { allPrices } from './price-list.ts';
import { withItem } from './route.ts';

export const askPrices: Intent<'askPrices'> = {
  slots: ['item', 'all'],
  costs: true,
  decide: (scene, entry: EntryOf<'askPrices'>) =>
    entry.all === true
      ? allPrices(scene)
      : withItem(scene, entry, (item) => {
          const lines = [...purchases(scene, item), ...coming(scene, item), ...readyCuts(scene, item)];
          return lines.length === 0 ? refused(say('no-price', { item: name(item) })) : answered(...lines);
        }),
};

/** The price that holds, and the newest of each supplier beside it. */
function purchases(scene: Scene, item: string): readonly Reply[] {
  const held = recall(scene.kitchen.memory, priceKey(item), scene.at);
  if (held === undefined) return [];
  const others = recallAll(scene.kitchen.memory, priceBookKey(item, ''), scene.at).filter(
    ({ value }) => value.supplier !== held.value.supplier,
  );
  return [
    sayCost('prices-of', { item: name(item), prices: list([priceLine(held), ...others.map(priceLine)]) }),
  ];
}

/** Prices with a date that is still to come. */
function coming({ kitchen, at }: Scene, item: string): readonly Reply[] {
  return recallComing(kitchen.memory, priceKey(item), at).map(({ value, at: from }) => {
    const words = sayCost('price-set-from', {
      item: name(item),
      price: saidPrice(value.amount),
      date: date(from),
    });
    return line(
      words,
      ...(value.supplier === undefined ? [] : [sayCost('from-supplier', { supplier: value.supplier })]),
    );
  });
}

function readyCuts(scene: Scene, item: string): readonly Reply[] {
  const held = recall(scene.kitchen.memory, readyCutKey(item), scene.at);
  if (held === undefined) return [];
  const isOther = ({ value }: Recalled): boolean =>
    value.supplier !== held.value.supplier ||
    value.eachGrams?.toString() !== held.value.eachGrams?.toString();
  const others = recallAll(scene.kitchen.memory, `${readyCutKey(item)}\n`, scene.at).filter(isOther);
  return [
    sayCost('ready-cut-prices-of', {
      item: name(item),
      prices: list([priceLine(held), ...others.map(priceLine)]),
    }),
  ];
}

function priceLine({ value, at }: Recalled): Reply {
  const { supplier, eachGrams } = value;
  const words = [
    sayCost('price-alone', {
      price: value.each === undefined ? saidPrice(value.amount) : price(value.amount),
    }),
  ];
  if (eachGrams !== undefined) words.push(sayCost('price-for-size', { size: size(eachGrams) }));
  if (supplier !== undefined) words.push(sayCost('from-supplier', { supplier }));
  return sayCost('price-since', { of: list(words, 'space'), date: date(at) });
}

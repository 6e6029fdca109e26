// "ready cut 9.85": what the same portions cost bought cut; the verdict is held against it.
import type { Decimal } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import { sizeOf } from '../core/kitchen.ts';
import { perLbOf } from '../core/money.ts';
import type { Grams } from '../core/quantity.ts';
import { money, name, price, say, sayCost, size } from '../core/reply.ts';
import { line } from './card.ts';
import { asks, type Decision, type Intent, lacking, recorded } from './intent.ts';
import { withItem } from './route.ts';
import { verdictLines } from './verdict-lines.ts';

export const readyCut: Intent<'readyCut'> = {
  slots: ['item', 'price', 'priceEach', 'each'],
  decide: (scene, entry) =>
    withItem(scene, entry, (item) => {
      if (entry.priceEach === undefined) return record(item, { entry, perLb: entry.price });
      const each = entry.each ?? sizeOf(scene.kitchen, item);
      if (each === undefined) return asks(say('ask-portion-size', { price: money(entry.priceEach) }), { wants: lacking({ ...entry, item }, 'each') });
      return record(item, { entry, perLb: perLbOf(entry.priceEach, each), each });
    }),
};

interface Said {
  readonly entry: EntryOf<'readyCut'>;
  readonly perLb?: Decimal;
  readonly each?: Grams;
}

function record(item: string, { entry, perLb, each }: Said): Decision {
  if (perLb === undefined) return asks(say('ask-ready-cut-price', { item: name(item) }), { wants: lacking(entry, 'price') });
  const fact = { type: 'readyCutPriced', item, perLb, each: entry.priceEach, eachGrams: each } as const;
  return recorded([{ fact, item }], (now) => {
    const by = each !== undefined && entry.priceEach !== undefined ? [sayCost('ready-cut-each', { price: money(entry.priceEach), size: size(each) })] : [];
    const read = now.seesCosts ? line(sayCost('ready-cut-set', { item: name(item), price: price(perLb) }), ...by) : say('ready-cut-noted', { item: name(item) });
    return { say: [read, ...verdictLines(now, item)] };
  });
}

// "ribeye 14.2 lb 7.40": a piece and a sum without a word. By weight, or for all of it? Where only one of the two can be, that.
import type { Entry, EntryOf } from '../core/entry.ts';
import { priceOf } from '../core/kitchen.ts';
import { perLbFrom, perUnit } from '../core/money.ts';
import { isPlainlyPerLb } from '../core/plausible.ts';
import type { KitchenUnit } from '../core/quantity.ts';
import { name, say } from '../core/reply.ts';
import type { Asked, Scene } from './intent.ts';

type Receive = EntryOf<'receive'>;

/** What has to be asked of the price; `scene` tells what the piece cost before. */
export function loosePriceAsk(entry: Receive, unit: KitchenUnit, scene?: Scene): Asked | undefined {
  const { item, price: perLb, weight: grams } = entry;
  if (entry.loose !== true || item === undefined || perLb === undefined) return undefined;
  const amount = perUnit(perLb, unit);
  const known = scene && priceOf(scene.kitchen, item, scene.at)?.perLb;
  if (isPlainlyPerLb({ grams, perLb, amount }, known)) return undefined;
  const { loose: _, price: __, ...piece } = entry;
  const perWeight: Receive = { ...piece, price: perLb };
  const total: Receive = { ...piece, cost: amount };
  return {
    asked: say('ask-per-pound-or-total', { subject: name(item) }),
    choices: { perUnit: perWeight, total, ...byUnit(perWeight, unit) },
  };
}

/** A price per unit of the kitchen is also chosen as "price", "pound" or "kilo". */
export function byUnit(entry: Entry | undefined, unit: KitchenUnit): Readonly<Record<string, Entry>> {
  if (entry?.kind !== 'receive' || entry.price === undefined) return {};
  const amount = perUnit(entry.price, unit);
  const per = (by: KitchenUnit): Entry => ({ ...entry, price: perLbFrom(amount, by) });
  return { newPrice: entry, pound: per('lb'), kilo: per('kg') };
}

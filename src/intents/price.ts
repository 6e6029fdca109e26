// "ribeye is 7.95 now": what the item costs from now on; an open test without a price takes it.
import type { Decimal } from '../core/decimal.ts';
import { openTests, poolOf, priceOf } from '../core/kitchen.ts';
import { poolFigures } from '../core/pool.ts';
import { list, name, price as perLb, type Reply, saidPrice, say, sayCost } from '../core/reply.ts';
import type { Test } from '../core/test.ts';
import { cardCosts, figuresOf, line } from './card.ts';
import { answered, type Intent, recorded, type Response, type Scene } from './intent.ts';
import { newest } from './route.ts';

export const price: Intent<'price'> = {
  slots: ['item', 'price', 'number'],
  decide: (scene, entry) => {
    const { item, price: value } = entry;
    const lacking = open(scene, item).find(isUnpriced);
    if (lacking === undefined && priceOf(scene.kitchen, item)?.perLb.eq(value) === true)
      return answered(sayCost('already', { of: list([priceWords(entry)]) }, priceNoted(item)));
    const fact = { type: 'priced', item, perLb: value } as const;
    return recorded([{ fact, item, test: lacking?.id }], (now) => respondPrice(now, entry, lacking));
  },
};

const open = (scene: Scene, item: string): readonly Test[] =>
  openTests(scene.kitchen).filter((test) => test.item === item);

const isUnpriced = ({ received }: Test): boolean => received.perLb === undefined && received.cost === undefined;

const priceNoted = (item: string): Reply => say('price-noted', { item: name(item) });

const priceWords = ({ item, price: value }: Priced): Reply =>
  sayCost('price-set', { item: name(item), price: saidPrice(value) }, priceNoted(item));

interface Priced {
  readonly item: string;
  readonly price: Decimal;
}

/** The price as it holds, what it does to the test that took it, or what an item costs at it. */
export function respondPrice(scene: Scene, entry: Priced, took: Test | undefined): Response {
  const test = took && scene.kitchen.tests.get(took.id);
  const more = test === undefined ? keptAndUsable(scene, entry) : cardCosts(figuresOf(scene, test));
  return { say: [scene.seesCosts ? line(priceWords(entry), ...more) : priceNoted(entry.item)] };
}

function keptAndUsable(scene: Scene, { item, price: value }: Priced): readonly Reply[] {
  const pooled = poolFigures(poolOf(scene.kitchen, item), { pricePerLb: value });
  const usable = pooled?.costs && {
    cost: perLb(pooled.costs.usableCostPerLb),
    tests: pooled.tests,
  };
  return [
    ...keptWords(scene, item),
    usable === undefined ? say('no-yield-yet') : sayCost('usable-at-yield', usable),
  ];
}

/** What tests were bought at does not change afterwards. */
function keptWords(scene: Scene, item: string): readonly Reply[] {
  const kept = open(scene, item).find((test) => !isUnpriced(test));
  const own = kept && figuresOf(scene, kept).pricePerLb;
  if (own !== undefined) return [sayCost('test-keeps-price', { price: perLb(own) })];
  const closed = newest(scene, (test) => test.item === item && test.status === 'closed');
  return closed === undefined && poolOf(scene.kitchen, item).tests === 0 ? [] : [say('tests-keep-prices')];
}

// "ribeye is 7.95 now", "ribeye from harbor 7.95": what the item costs from now on, or from a day; an open test without a
// price takes it. Where it turns the verdict, that is said at once.
import type { Decimal } from '../core/decimal.ts';
import type { Entry, EntryOf } from '../core/entry.ts';
import { openTests, poolOf, priceOf } from '../core/kitchen.ts';
import { poolFigures } from '../core/pool.ts';
import { date, list, name, price as perLb, type Reply, saidPrice, say, sayCost } from '../core/reply.ts';
import { isFarPrice } from '../core/slip.ts';
import type { Test } from '../core/test.ts';
import { cardCosts, figuresOf, line } from './card.ts';
import {
  answered,
  confirm,
  type Decision,
  type Intent,
  lacking,
  recorded,
  type Response,
  type Scene,
} from './intent.ts';
import { fromDay } from './later.ts';
import { newest } from './route.ts';
import { turnLines } from './verdict-lines.ts';

export const price: Intent<'price'> = {
  slots: ['item', 'price', 'number', 'supplier', 'day', 'old'],
  decide: (scene, entry) => fromDay(scene, entry.day, (from) => decidePrice(scene, entry, from)),
};

function decidePrice(scene: Scene, entry: EntryOf<'price'>, from: string | undefined): Decision {
  const { item, price: value, supplier } = entry;
  const priced: Priced = { item, price: value, supplier, from };
  const takes =
    from === undefined
      ? open(scene, item).find((test) => isUnpriced(test) && isFrom(test, supplier))
      : undefined;
  if (takes === undefined && isKnown(scene, priced))
    return answered(sayCost('already', { of: list([priceWords(priced)]) }, priceNoted(item)));
  const doubt = farPrice(scene, entry, { item, price: value });
  if (doubt !== undefined) return doubt;
  const was = priceOf(scene.kitchen, item, scene.at)?.perLb;
  const fact = { type: 'priced', item, perLb: value, supplier, from } as const;
  return recorded([{ fact, item, test: takes?.id }], (now) => respondPrice(now, { ...priced, was }, takes));
}

const open = (scene: Scene, item: string): readonly Test[] =>
  openTests(scene.kitchen).filter((test) => test.item === item);

export const isUnpriced = ({ received }: Test): boolean =>
  received.perLb === undefined && received.cost === undefined;

/** What one supplier asks is not the price of a piece from another. */
const isFrom = ({ received }: Test, supplier: string | undefined): boolean =>
  supplier === undefined || received.supplier === undefined || received.supplier === supplier;

/** Says nothing that does not hold already at its time. */
function isKnown({ kitchen, at }: Scene, { item, price: value, supplier, from }: Priced): boolean {
  const known = priceOf(kitchen, item, from ?? at);
  if (known?.perLb.eq(value) !== true || (from !== undefined && known.at !== from)) return false;
  return supplier === undefined || known.supplier === supplier;
}

/** A price that is some ten times, or a tenth, of the one before is asked about once. */
export function farPrice(
  scene: Scene,
  entry: Entry & { readonly sure?: true },
  { item, price: value }: Priced,
): Decision | undefined {
  const before = priceOf(scene.kitchen, item, scene.at)?.perLb;
  if (entry.sure === true || before === undefined || !isFarPrice(value, before)) return undefined;
  const args = { item: name(item), price: saidPrice(value), before: saidPrice(before) };
  const asked = sayCost('ask-far-price', args, say('ask-far-price-hidden', { item: name(item) }));
  return confirm(asked, entry, lacking(entry, 'price'));
}

const priceNoted = (item: string): Reply => say('price-noted', { item: name(item) });

function priceWords({ item, price: value, supplier, from }: Priced): Reply {
  const args = { item: name(item), price: saidPrice(value) };
  const read =
    from === undefined
      ? sayCost('price-set', args)
      : sayCost('price-set-from', { ...args, date: date(from) });
  const words = line(read, ...(supplier === undefined ? [] : [sayCost('from-supplier', { supplier })]));
  return { ...words, cost: true, instead: priceNoted(item) };
}

interface Priced {
  readonly item: string;
  readonly price: Decimal;
  readonly supplier?: string;
  readonly from?: string;
  /** The price that held before it. */
  readonly was?: Decimal;
}

/** The price as it holds, what it does to the test that took it, or what an item costs at it; and whether it turns the verdict. */
export function respondPrice(scene: Scene, entry: Priced, took: Test | undefined): Response {
  const test = took && scene.kitchen.tests.get(took.id);
  const more = test === undefined ? keptAndUsable(scene, entry) : cardCosts(figuresOf(scene, test));
  const read = scene.seesCosts ? line(priceWords(entry), ...more) : priceNoted(entry.item);
  return {
    say: [read, ...turnLines(scene, entry.item, { was: entry.was, is: entry.price, from: entry.from })],
  };
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

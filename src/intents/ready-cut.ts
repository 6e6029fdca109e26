// "ready cut 9.85": what the same portions cost bought cut; the verdict is held against it.
import type { Decimal } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import type { FactOf } from '../core/facts.ts';
import { readyCutOf, sizeOf } from '../core/kitchen.ts';
import { perLbOf } from '../core/money.ts';
import { commonSize } from '../core/portions.ts';
import type { Grams } from '../core/quantity.ts';
import { name, price, type Reply, saidMoney, saidPrice, say, sayCost, size } from '../core/reply.ts';
import { line } from './card.ts';
import { answered, asks, type Decision, type Intent, lacking, recorded, type Scene } from './intent.ts';
import { openTestFor, withItem } from './route.ts';
import { turnedLines, verdictLines } from './verdict-lines.ts';

type ReadyCut = EntryOf<'readyCut'>;

export const readyCut: Intent<'readyCut'> = {
  slots: ['item', 'price', 'priceEach', 'each', 'supplier', 'day'],
  decide: (scene, entry) =>
    withItem(scene, entry, (item) => {
      if (entry.priceEach === undefined)
        return record(scene, item, { entry, perLb: entry.price, each: entry.each });
      const each = entry.each ?? targetOf(scene, item);
      if (each === undefined) return askSize(item, entry, entry.priceEach);
      return record(scene, item, { entry, perLb: perLbOf(entry.priceEach, each), each });
    }),
};

/** The size that the portions of the open test are cut to; where none is open, the size last cut to. */
function targetOf(scene: Scene, item: string): Grams | undefined {
  const test = openTestFor(scene, item);
  return test === undefined ? sizeOf(scene.kitchen, item) : commonSize(test.portions.batches);
}

function askSize(item: string, entry: ReadyCut, priceEach: Decimal): Decision {
  const asked = sayCost('ask-portion-size', { price: saidMoney(priceEach) }, say('ask-portion-size-hidden'));
  return asks(asked, { wants: lacking({ ...entry, item }, 'each') });
}

interface Said {
  readonly entry: ReadyCut;
  readonly perLb?: Decimal;
  readonly each?: Grams;
}

function record(scene: Scene, item: string, { entry, perLb, each }: Said): Decision {
  if (perLb === undefined)
    return asks(say('ask-ready-cut-price', { item: name(item) }), { wants: lacking(entry, 'price') });
  const { supplier } = entry;
  const fact = {
    type: 'readyCutPriced',
    item,
    perLb,
    each: entry.priceEach,
    eachGrams: each,
    supplier,
  } as const;
  const said = (at: Scene): readonly Reply[] => [
    readyCutWords(fact, 'ready-cut-noted'),
    ...verdictLines(at, item),
  ];
  const known = readyCutOf(scene.kitchen, item);
  const isSame = known?.perLb.eq(perLb) === true && known.each?.toString() === entry.priceEach?.toString();
  const isNew =
    (each !== undefined && known?.eachGrams?.eq(each) !== true) ||
    (supplier !== undefined && known?.supplier !== supplier);
  const isKnown = isSame && !isNew;
  return isKnown
    ? answered(...said(scene))
    : recorded([{ fact, item }], (now) => ({ say: [...said(now), ...turnedLines(scene, now, item)] }));
}

/** The price per pound, and how it was come by where it was said by the portion; and what is said to those who may not see it. */
export function readyCutWords(
  { item, perLb, each, eachGrams, supplier }: FactOf<'readyCutPriced'>,
  hidden: string,
): Reply {
  const byPortion: Reply[] =
    each === undefined || eachGrams === undefined
      ? []
      : [sayCost('ready-cut-each', { price: saidMoney(each), size: size(eachGrams) })];
  const perPound = byPortion.length === 0 ? saidPrice(perLb) : price(perLb);
  const args = { item: name(item), price: perPound };
  if (each === undefined && eachGrams !== undefined)
    byPortion.push(sayCost('portion-size', { size: size(eachGrams) }));
  if (supplier !== undefined) byPortion.push(sayCost('from-supplier', { supplier }));
  return line(sayCost('ready-cut-set', args, say(hidden, { item: name(item) })), ...byPortion);
}

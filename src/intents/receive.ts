// "ribeye 14.2 lb at 7.40": a piece comes to the table, and its test opens.
import type { EntryOf } from '../core/entry.ts';
import { openTests, priceOf } from '../core/kitchen.ts';
import { costOf } from '../core/money.ts';
import { isFarFromUsual } from '../core/plausible.ts';
import { list, name, say, weight } from '../core/reply.ts';
import type { Test } from '../core/test.ts';
import { figuresOf, receivedLine } from './card.ts';
import {
  answered,
  asks,
  confirm,
  type Decision,
  type Intent,
  lacking,
  recorded,
  type Scene,
} from './intent.ts';
import { loosePriceAsk } from './loose-price.ts';
import { farPrice } from './price.ts';
import { openTestFor } from './route.ts';
import { turnLines } from './verdict-lines.ts';

type Receive = EntryOf<'receive'>;

export const receive: Intent<'receive'> = {
  slots: ['item', 'weight', 'price', 'cost', 'pieces', 'supplier', 'number', 'loose'],
  decide: (scene, entry) => {
    const { item } = entry;
    if (item === undefined)
      return asks(say('ask-what-item', { weight: weight(entry.weight) }), { wants: lacking(entry, 'item') });
    const loose = loosePriceAsk(entry, scene.kitchen.settings.unit, scene);
    if (entry.told !== true) {
      const same = openTests(scene.kitchen).find((test) => test.item === item && isSame(test, entry));
      if (same !== undefined)
        return answered(say('already', { of: list([receivedLine(same, figuresOf(scene, same))]) }));
      if (loose !== undefined) return { is: 'asked', ask: loose };
      const there = openTestFor(scene, item);
      if (there !== undefined) return anotherOrCorrection(entry, there);
    }
    return far(scene, entry, item) ?? farPaid(scene, entry, item) ?? openTest(scene, entry, item);
  },
};

/** Says nothing that the open test does not have. */
function isSame({ received }: Test, entry: Receive): boolean {
  const priced =
    entry.price === undefined ||
    (received.perLb ?? received.cost?.div(received.grams))?.eq(entry.price) === true;
  const paid =
    entry.cost === undefined ||
    received.cost?.eq(entry.cost) === true ||
    (received.perLb !== undefined && costOf(received.grams, received.perLb).eq(entry.cost));
  return (
    received.grams.eq(entry.weight) && priced && paid && (entry.pieces ?? received.pieces) === received.pieces
  );
}

/** The same said again is another piece: that is what the words say. */
function anotherOrCorrection(entry: Receive, there: Test): Decision {
  const { weight: grams, price, cost, pieces } = entry;
  const item = there.item;
  const replace = { kind: 'correct', item, weight: grams, price, cost, pieces, test: there.id } as const;
  const anotherPiece: Receive = { ...entry, told: true };
  const args = { item: name(item), before: weight(there.received.grams), weight: weight(grams) };
  return asks(say('ask-another-piece', args), {
    choices: { anotherPiece, replace },
    again: { said: entry, accepts: anotherPiece },
  });
}

/** A weight that may have lost or gained a decimal point is asked about once. */
export function far(scene: Scene, entry: Receive, item: string): Decision | undefined {
  if (
    entry.sure === true ||
    !isFarFromUsual(scene.usual.get(item), { grams: entry.weight, pieces: entry.pieces })
  )
    return undefined;
  const [usual] = scene.usual.get(item) ?? [];
  const args = { item: name(item), weight: weight(entry.weight), usual: weight(usual ?? entry.weight) };
  return confirm(say('ask-far-from-usual', args), entry, lacking(entry, 'weight'));
}

/** A price with a lost decimal point is asked about like one that is said by itself, unless the piece was asked about already. */
function farPaid(scene: Scene, entry: Receive, item: string): Decision | undefined {
  const { price } = entry;
  if (price === undefined || entry.told === true) return undefined;
  return farPrice(scene, entry, { item, price });
}

function openTest(scene: Scene, entry: Receive, item: string): Decision {
  const { weight: grams, price: perLb, cost, pieces, supplier } = entry;
  const test = scene.kitchen.nextTest;
  return recorded(
    [{ test, item, fact: { type: 'received', item, grams, perLb, cost, pieces, supplier } }],
    (now) => {
      const opened = now.kitchen.tests.get(test);
      if (opened === undefined) return { say: [] };
      const figure = figuresOf(now, opened);
      const turned =
        figure.pricePerLb &&
        turnLines(now, item, { was: priceOf(scene.kitchen, item, scene.at)?.perLb, is: figure.pricePerLb });
      return { say: [receivedLine(opened, figure), ...(turned ?? [])] };
    },
  );
}

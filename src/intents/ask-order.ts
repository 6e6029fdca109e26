// "how much ribeye for 40 16-ounce": what to buy, rounded up, from the pooled yield.
import { roundUp } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import { poolOf } from '../core/kitchen.ts';
import { gramsToBeSure, gramsToBuy, piecesToBuy } from '../core/order.ts';
import { poolFigures } from '../core/pool.ts';
import { fromGrams, type Grams, type KitchenUnit, toGrams } from '../core/quantity.ts';
import { name, percent, type Reply, say, size, weight } from '../core/reply.ts';
import { figuresOf, line } from './card.ts';
import { answered, asks, type Intent, lacking, refused, type Scene } from './intent.ts';
import { withItem } from './route.ts';

export const askOrder: Intent<'askOrder'> = {
  slots: ['item', 'count', 'each'],
  decide: (scene, entry: EntryOf<'askOrder'>) =>
    withItem(scene, entry, (item) => {
      const { count, each } = entry;
      if (each === undefined)
        return asks(say('ask-order-size', { count }), { wants: lacking({ ...entry, item }, 'each') });
      const known = yieldOf(scene, item);
      if (known === undefined) return refused(say('no-tests-yet', { item: name(item) }));
      const { unit } = scene.kitchen.settings;
      const grams = gramsToBuy({ count, eachGrams: each, ...known });
      const rounded = upTo(grams, unit);
      const args = {
        item: name(item),
        weight: weight(rounded),
        count,
        size: size(each),
        share: percent(known.portionGrams.div(known.receivedGrams).times(100)),
      };
      return answered(
        line(say('order', args), known.behind),
        ...beingSure(scene, item, { count, each, pieces: inPieces(known, grams) }),
      );
    }),
};

/** In the unit of the kitchen, rounded up to a tenth: what is ordered must be enough. */
const upTo = (grams: Grams, unit: KitchenUnit): Grams => toGrams(roundUp(fromGrams(grams, unit), 1), unit);

/** In whole pieces (or bags, or cases) like those tested. */
const inPieces = ({ pieceGrams }: Known, grams: Grams): Reply =>
  say('order-pieces', { pieces: piecesToBuy(grams, pieceGrams), weight: weight(pieceGrams) });

/** The pieces, and the amount that is enough nine times in ten, or that nobody can tell it yet. */
function beingSure(
  scene: Scene,
  item: string,
  { count, each, pieces }: { count: number; each: Grams; pieces: Reply },
): readonly Reply[] {
  const pool = poolOf(scene.kitchen, item);
  const grams = gramsToBeSure(pool, { count, eachGrams: each });
  if (grams === undefined) return [line(pieces, say('order-not-sure'))];
  const rounded = upTo(grams, scene.kitchen.settings.unit);
  return [
    line(pieces),
    say('order-sure', {
      weight: weight(rounded),
      pieces: piecesToBuy(grams, pool.receivedGrams.div(pool.tests)),
    }),
  ];
}

interface Known {
  readonly receivedGrams: Grams;
  readonly portionGrams: Grams;
  /** The mean weight of what was received for a test. */
  readonly pieceGrams: Grams;
  readonly behind: Reply;
}

/** What came of what: over the closed tests, else of the open one so far. */
function yieldOf(scene: Scene, item: string): Known | undefined {
  const pool = poolOf(scene.kitchen, item);
  const pooled = poolFigures(pool, {});
  if (pooled !== undefined)
    return {
      ...pool,
      pieceGrams: pool.receivedGrams.div(pool.tests),
      behind: say('tests-behind', { tests: pooled.tests }),
    };
  const test = [...scene.kitchen.tests.values()].findLast(
    (each) => each.item === item && each.status === 'open',
  );
  const figure = test && figuresOf(scene, test);
  if (figure?.portions === undefined || figure.overweight) return undefined;
  return {
    receivedGrams: figure.receivedGrams,
    portionGrams: figure.portions.grams,
    pieceGrams: figure.receivedGrams,
    behind: say('open-test-only'),
  };
}

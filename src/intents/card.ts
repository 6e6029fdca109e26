// Pieces of replies that several intents share: what is left, the figures of a test, the provisional ones.
import { type Figures, figures } from '../core/figures.ts';
import { openTests } from '../core/kitchen.ts';
import { type Grams, toGrams } from '../core/quantity.ts';
import { decimal } from '../core/decimal.ts';
import {
  list,
  money,
  name,
  percent,
  price,
  type Reply,
  saidPrice,
  say,
  sayCost,
  size,
  weight,
} from '../core/reply.ts';
import type { Test } from '../core/test.ts';
import type { Asked, Scene } from './intent.ts';
import { laborLines } from './labor-words.ts';

export const figuresOf = (scene: Scene, test: Test): Figures => figures(test, scene.kitchen.settings);

/** One line of several short messages; those that may not be seen fall out. */
export const line = (...parts: readonly Reply[]): Reply => say('line', { of: list(parts) });

/** The line with the cut's name before it, where more than one test is open. */
export const ofTest = (scene: Scene, test: Test, ...parts: readonly Reply[]): Reply =>
  openTests(scene.kitchen).length > 1
    ? say('of-item', { item: list([labelOf(scene, test)]), of: list(parts) })
    : line(...parts);

/** A question with the cut's name before it, where more than one test is open. */
export const askedOf = (scene: Scene, test: Test, asked: Reply): Reply =>
  openTests(scene.kitchen).length > 1 ? ofTest(scene, test, asked) : asked;

/** The cut's name; of two pieces of the same cut on the table, with its weight. */
export function labelOf(scene: Scene, { item, received }: Test): Reply {
  const same = openTests(scene.kitchen).filter((each) => each.item === item);
  const args = { item: name(item), weight: weight(received.grams) };
  return same.length > 1 ? say('received-weight', args) : say('item', args);
}

const NOTHING: Grams = toGrams(decimal('0.005'), 'lb');

/** What is left of the piece. */
export function toGo({ unaccountedGrams }: Figures): Reply {
  if (unaccountedGrams.abs().lt(NOTHING)) return say('none-left');
  return unaccountedGrams.isNegative()
    ? say('over', { weight: weight(unaccountedGrams.negated()) })
    : say('left', { weight: weight(unaccountedGrams) });
}

/** What is left, where no question about too much follows. */
export const leftOf = (figure: Figures): readonly Reply[] => (figure.overweight ? [] : [toGo(figure)]);

/** What came in, at what price. */
export function receivedLine(test: Test, figure: Figures): Reply {
  const { received } = test;
  const parts: Reply[] = [say('received-weight', { item: name(test.item), weight: weight(received.grams) })];
  if (received.pieces !== undefined) parts.push(say('pieces', { count: received.pieces }));
  if (figure.pricePerLb !== undefined && figure.purchaseCost !== undefined)
    parts.push(
      sayCost('at-price', {
        price: received.perLb === undefined ? price(figure.pricePerLb) : saidPrice(received.perLb),
        cost: money(figure.purchaseCost),
      }),
    );
  else parts.push(say('no-price-yet'));
  if (received.supplier !== undefined) parts.push(say('from-supplier', { supplier: received.supplier }));
  return line(...parts);
}

/** "12 portions of 16 oz, 11.2 lb, 78.9 %". */
export function portionsLine(figure: Figures): readonly Reply[] {
  const { portions } = figure;
  if (portions === undefined) return [];
  const { count, targetGrams, grams, yieldPct } = portions;
  const share = say('share', { share: percent(yieldPct) });
  if (count === undefined) return [say('portions-uncounted', { weight: weight(grams) }), share];
  const counted =
    targetGrams === undefined
      ? say('portions-count', { count })
      : say('portions-sized', { count, size: size(targetGrams) });
  return [counted, say('weight', { weight: weight(grams) }), share];
}

/** How the portion weight was come by, where that is not plain. */
export function basisLines({ portions }: Figures): readonly Reply[] {
  if (portions?.basis === 'nominal') return [say('basis-nominal')];
  if (portions?.basis === 'sample')
    return [say('basis-sample', { listed: portions.listed, count: portions.count ?? 0 })];
  return [];
}

/** The question of a test that is too heavy in all, with the provisional figures. */
export function overweightAsk(scene: Scene, test: Test): Asked | undefined {
  const figure = figuresOf(scene, test);
  if (!figure.overweight) return undefined;
  const { portions, unaccountedGrams, receivedGrams } = figure;
  const left = portions?.grams.plus(unaccountedGrams);
  const args = {
    total: weight(receivedGrams.minus(unaccountedGrams)),
    received: weight(receivedGrams),
    over: weight(unaccountedGrams.negated()),
    provisional: list(provisionalLines(figure), 'space'),
  };
  if (left === undefined || !left.gt(0) || !arePortionsInDoubt(test, figure))
    return {
      asked: askedOf(scene, test, say('ask-overweight-which', args)),
      choices: {},
      overweight: test.id,
    };
  const entry = { kind: 'portions', test: test.id } as const;
  return {
    asked: askedOf(scene, test, say('ask-overweight', { ...args, left: weight(left) })),
    choices: { yes: { ...entry, weight: left, told: true } },
    wants: { held: { ...entry, told: true }, slot: 'weight' },
    overweight: test.id,
  };
}

/** Portions that nobody weighed are, those on a list are not; a weighed total is where it was said last. */
function arePortionsInDoubt({ facts }: Test, { portions }: Figures): boolean {
  if (portions?.basis !== 'total') return portions?.basis !== 'list';
  const last = facts.at(-1)?.fact;
  return (last?.type === 'corrected' ? last.by : last)?.type === 'portioned';
}

/** While more is weighed than received: what the cost would be if the portions weighed what is left. */
export const provisionalLines = ({ provisional }: Figures): readonly Reply[] =>
  provisional === undefined
    ? []
    : [
        sayCost('provisional', {
          weight: weight(provisional.portionGrams),
          cost: price(provisional.costs.usableCostPerLb),
        }),
      ];

/** The whole test at a glance. */
export function cardLines(scene: Scene, test: Test): readonly Reply[] {
  const figure = figuresOf(scene, test);
  const parts = figure.parts.map((part) =>
    line(
      say('part-weight', { part: name(part.part), weight: weight(part.grams) }),
      say('share', { share: percent(part.yieldPct) }),
      ...worth(part),
    ),
  );
  const portions = portionsLine(figure);
  return [
    receivedLine(test, figure),
    ...parts,
    ...(portions.length === 0 ? [] : [line(...portions, ...basisLines(figure))]),
    ...(test.status === 'open' ? [line(toGo(figure))] : []),
    ...laborLines(figure),
    ...cardCosts(figure),
    ...provisionalLines(figure),
  ];
}

/** Beside the card: what hears here. */
export const heardBy = ({ hears }: Scene): readonly Reply[] =>
  hears === undefined ? [] : [say('heard-by', { engine: name(hears) })];

export const worth = ({ creditPerLb }: Figures['parts'][number]): readonly Reply[] =>
  creditPerLb?.gt(0) === true ? [sayCost('worth', { price: saidPrice(creditPerLb) })] : [];

/** What the test costs now, in a word, where it can be told. */
export const cardCosts = ({ costs }: Figures): readonly Reply[] =>
  costs === undefined ? [] : [sayCost('usable-cost', { cost: price(costs.usableCostPerLb) })];

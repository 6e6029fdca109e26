// Pieces of replies that several intents share: what is left, the figures of a test, the provisional ones.
import { type Figures, figures } from '../core/figures.ts';
import { openTests } from '../core/kitchen.ts';
import { type Grams, toGrams } from '../core/quantity.ts';
import { decimal } from '../core/decimal.ts';
import { list, money, name, number, percent, price, type Reply, say, sayCost, size, weight } from '../core/reply.ts';
import type { Test } from '../core/test.ts';
import type { Asked, Scene } from './intent.ts';

export const figuresOf = (scene: Scene, test: Test): Figures => figures(test, scene.kitchen.settings);

/** One line of several short messages; those that may not be seen fall out. */
export const line = (...parts: readonly Reply[]): Reply => say('line', { of: list(parts) });

/** The line with the cut's name before it, where more than one test is open. */
export const ofTest = (scene: Scene, test: Test, ...parts: readonly Reply[]): Reply =>
  openTests(scene.kitchen).length > 1 ? say('of-item', { item: name(test.item), of: list(parts) }) : line(...parts);

const NOTHING: Grams = toGrams(decimal('0.005'), 'lb');

/** What is left of the piece. */
export function toGo({ unaccountedGrams }: Figures): Reply {
  if (unaccountedGrams.abs().lt(NOTHING)) return say('none-left');
  return unaccountedGrams.isNegative() ? say('over', { weight: weight(unaccountedGrams.negated()) }) : say('left', { weight: weight(unaccountedGrams) });
}

/** What came in, at what price. */
export function receivedLine(test: Test, figure: Figures): Reply {
  const { received } = test;
  const parts: Reply[] = [say('received-weight', { item: name(test.item), weight: weight(received.grams) })];
  if (received.pieces !== undefined) parts.push(say('pieces', { count: received.pieces }));
  if (figure.pricePerLb !== undefined && figure.purchaseCost !== undefined)
    parts.push(sayCost('at-price', { price: price(figure.pricePerLb), cost: money(figure.purchaseCost) }));
  else parts.push(say('no-price-yet'));
  if (received.supplier !== undefined) parts.push(say('from-supplier', { supplier: received.supplier }));
  return line(...parts);
}

/** "12 portions of 16 oz, 11.2 lb, 78.9 %". */
export function portionsLine(figure: Figures): readonly Reply[] {
  const { portions } = figure;
  if (portions === undefined) return [];
  const { count, targetGrams, grams, yieldPct } = portions;
  return [
    count === undefined ? say('portions-uncounted') : targetGrams === undefined ? say('portions-count', { count }) : say('portions-sized', { count, size: size(targetGrams) }),
    say('weight', { weight: weight(grams) }),
    say('share', { share: percent(yieldPct) }),
  ];
}

/** How the portion weight was come by, where that is not plain. */
export function basisLines({ portions }: Figures): readonly Reply[] {
  if (portions?.basis === 'nominal') return [say('basis-nominal')];
  if (portions?.basis === 'sample') return [say('basis-sample', { listed: portions.listed, count: portions.count ?? 0 })];
  return [];
}

/** The question of a test that is too heavy in all, with the provisional figures. */
export function overweightAsk(scene: Scene, test: Test): Asked | undefined {
  const figure = figuresOf(scene, test);
  if (!figure.overweight) return undefined;
  const total = test.received.grams.minus(figure.unaccountedGrams);
  const args = { total: weight(total), received: weight(test.received.grams), over: weight(figure.unaccountedGrams.negated()) };
  const left = figure.provisional?.portionGrams ?? test.received.grams.minus(total.minus(figure.portions?.grams ?? decimal('0')));
  const item = test.item;
  if (figure.portions === undefined || !left.gt(0)) return { asked: say('ask-overweight-parts', args), choices: {} };
  return {
    asked: say('ask-overweight', { ...args, left: weight(left), provisional: list(provisional(figure), 'space') }),
    choices: { yes: { kind: 'portions', weight: left, told: true, item } },
    wants: { held: { kind: 'portions', item }, slot: 'weight' },
  };
}

function provisional({ provisional: figure }: Figures): readonly Reply[] {
  return figure === undefined ? [] : [sayCost('provisional', { weight: weight(figure.portionGrams), cost: price(figure.costs.usableCostPerLb) })];
}

/** The whole test at a glance. */
export function cardLines(scene: Scene, test: Test): readonly Reply[] {
  const figure = figuresOf(scene, test);
  const parts = figure.parts.map((part) =>
    line(
      say('part-weight', { part: name(part.part), weight: weight(part.grams) }),
      say('share', { share: percent(part.yieldPct) }),
      ...(part.creditPerLb?.gt(0) === true ? [sayCost('worth', { price: price(part.creditPerLb) })] : []),
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
  ];
}

/** Minutes and packing, as far as they were said. */
export function laborLines({ labor, packingCost }: Figures): readonly Reply[] {
  const lines: Reply[] = [];
  if (labor.minutes !== undefined)
    lines.push(labor.cost === undefined ? say('labor-no-rate', { minutes: number(labor.minutes, 1) }) : sayCost('labor', { minutes: number(labor.minutes, 1), cost: money(labor.cost) }));
  if (packingCost !== undefined) lines.push(sayCost('packing-cost', { cost: money(packingCost) }));
  return lines.length === 0 ? [] : [line(...lines)];
}

/** What the test costs now, in a word, where it can be told. */
export const cardCosts = ({ costs }: Figures): readonly Reply[] => (costs === undefined ? [] : [sayCost('usable-cost', { cost: price(costs.usableCostPerLb) })]);

// The result of a closed test: where the piece went, what a pound and a portion cost, and the verdict.
import { isOnTarget } from '../core/costs.ts';
import type { Figures } from '../core/figures.ts';
import {
  list,
  money,
  name,
  number,
  percent,
  price,
  type Reply,
  say,
  sayCost,
  size,
  weight,
} from '../core/reply.ts';
import type { Test } from '../core/test.ts';
import { productLines } from './ask-products.ts';
import { basisLines, figuresOf, line, portionsLine, receivedLine } from './card.ts';
import { laborLines, loadedCosts } from './labor-words.ts';
import type { Scene } from './intent.ts';
import { onWeightLines } from './on-weight.ts';
import { testVerdictLines } from './verdict-lines.ts';

export function resultLines(scene: Scene, test: Test): readonly Reply[] {
  const figure = figuresOf(scene, test);
  const portions = portionsLine(figure);
  return [
    say('closed', { item: name(test.item) }),
    receivedLine(test, figure),
    ...(figure.parts.length === 0
      ? []
      : [
          say('parts', {
            parts: list(
              figure.parts.map((part) =>
                say('part-share', {
                  part: name(part.part),
                  weight: weight(part.grams),
                  share: percent(part.yieldPct),
                }),
              ),
            ),
          }),
        ]),
    portions.length === 0 ? say('no-portions') : line(...portions, ...basisLines(figure)),
    line(...unaccounted(figure)),
    ...costLines(figure),
    ...productLines(scene, test),
    ...onWeightLines(scene, test),
    ...offTargetWords(scene, figure),
    ...laborLines(figure),
    ...(test.closedFlagged ? [say('closed-flagged')] : testVerdictLines(scene, test)),
  ];
}

function unaccounted({ unaccountedGrams, unaccountedPct }: Figures): readonly Reply[] {
  if (unaccountedGrams.isZero()) return [say('balances')];
  const args = { weight: weight(unaccountedGrams.abs()), share: percent(unaccountedPct.abs()) };
  return [say(unaccountedGrams.isNegative() ? 'weighed-over' : 'cutting-loss', args)];
}

/** What a pound and a portion cost; and what portions off their target give away. */
export function costLines(figure: Figures): readonly Reply[] {
  const { costs, portions, creditTotal } = figure;
  if (costs === undefined) return [];
  const of = portions?.targetGrams ?? portions?.meanGrams;
  const parts: Reply[] = [sayCost('usable-cost', { cost: price(costs.usableCostPerLb) })];
  const more: Reply[] = [sayCost('cost-factor', { factor: number(costs.costFactor, 3) })];
  if (costs.portionCost !== undefined && of !== undefined)
    parts.push(sayCost('portion-cost', { size: size(of), cost: money(costs.portionCost) }));
  if (creditTotal.gt(0)) more.push(sayCost('after-credits', { credit: money(creditTotal) }));
  const loaded = costs.loadedCostPerLb.eq(costs.usableCostPerLb) ? [] : [loadedLine(figure)];
  return [line(...parts), line(...more), ...loaded, ...offTarget(figure)];
}

function loadedLine(figure: Figures): Reply {
  const { costs } = figure;
  const portion =
    costs?.loadedPortionCost === undefined
      ? []
      : [sayCost('loaded-portion', { cost: money(costs.loadedPortionCost) })];
  return line(...loadedCosts(figure), ...portion);
}

function offTarget({ costs, portions }: Figures): readonly Reply[] {
  if (
    costs?.meanPortionCost === undefined ||
    costs.giveawayPerPortion === undefined ||
    portions?.meanGrams === undefined
  )
    return [];
  const heavy = !costs.giveawayPerPortion.isNegative();
  const args = {
    mean: size(portions.meanGrams),
    cost: money(costs.meanPortionCost),
    difference: money(costs.giveawayPerPortion.abs()),
  };
  return [sayCost(heavy ? 'portions-heavy' : 'portions-light', args)];
}

/** To those who may not see what it costs: that the portions are off their size. */
function offTargetWords(scene: Scene, { portions }: Figures): readonly Reply[] {
  const { targetGrams: target, meanGrams: mean } = portions ?? {};
  if (scene.seesCosts || target === undefined || mean === undefined || isOnTarget(mean, target)) return [];
  return [
    say(mean.gt(target) ? 'portions-heavy-plain' : 'portions-light-plain', {
      mean: size(mean),
      size: size(target),
    }),
  ];
}

// How the weights on a list lie around the size that was asked for, in words.
import { heaviness, portionRow, readPortionRow, testOnWeight, WEEKS_LOOKED_AT } from '../core/heavy.ts';
import { costOf } from '../core/money.ts';
import { list, money, number, type Reply, say, sayCost, size } from '../core/reply.ts';
import type { Test } from '../core/test.ts';
import { figuresOf, line } from './card.ts';
import type { Scene } from './intent.ts';

/** Within so many weights nothing is told of the hand that cut them. */
const FEW = 3;

/** While the list grows: how many are off. */
export function offWords(scene: Scene, test: Test): readonly Reply[] {
  const found = testOnWeight(test, scene.kitchen.settings);
  if (found === undefined) return [];
  const { under, over, listed, toleranceGrams } = found;
  const args = { under, over, listed, tolerance: size(toleranceGrams) };
  return [say(under + over === 0 ? 'all-on-weight' : 'off-weight', args)];
}

/** Of a closed test: the spread, what is off, what the weight above the size gives away, and Cp and Cpk. */
export function onWeightLines(scene: Scene, test: Test): readonly Reply[] {
  const found = testOnWeight(test, scene.kitchen.settings);
  if (found?.deviationGrams === undefined || found.listed < FEW) return [];
  const { costs, portions } = figuresOf(scene, test);
  const { cp, cpk, deviationGrams, overGrams, listed } = found;
  const parts = [say('portion-spread', { spread: size(deviationGrams) }), ...offWords(scene, test)];
  if (cp !== undefined && cpk !== undefined)
    parts.push(say('capability', { cp: number(cp, 2), cpk: number(cpk, 2) }));
  const each = costs && costOf(overGrams.div(listed), costs.usableCostPerLb);
  if (each === undefined || !each.gt(0)) return [line(...parts)];
  const all = each.times(portions?.count ?? listed);
  const isTold = costs?.giveawayPerPortion?.gt(0) === true;
  const given = sayCost(isTold ? 'given-away-all' : 'given-away', { each: money(each), all: money(all) });
  return [line(...parts), say('line', { of: list([given, ...weekLines(scene, test)], 'space') })];
}

/** With the tests of the last weeks before it: what overweight gives away in a week. */
function weekLines(scene: Scene, test: Test): readonly Reply[] {
  const { closedAt = scene.at, item } = test;
  const before = scene.past.flatMap((past) =>
    past.item === item ? (readPortionRow(past.closedAt ?? '', past.figures ?? {}) ?? []) : [],
  );
  const usableCostPerLb = figuresOf(scene, test).costs?.usableCostPerLb;
  const own = readPortionRow(closedAt, portionRow(test, scene.kitchen.settings));
  if (own === undefined || before.length === 0) return [];
  const found = heaviness([{ ...own, usableCostPerLb }, ...before], scene.at);
  if (found?.givenAway === undefined || found.tests < 2) return [];
  return [
    sayCost('given-away-week', {
      week: money(found.givenAway.perWeek),
      tests: found.tests,
      weeks: WEEKS_LOOKED_AT,
    }),
  ];
}

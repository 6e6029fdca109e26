// "what's ribeye at", "ribeye at 7.80?": the usable cost of an item, now or at another purchase price.
import type { EntryOf } from '../core/entry.ts';
import { poolOf, priceOf, sizeOf } from '../core/kitchen.ts';
import { costsPerLb, type Sums } from '../core/costs.ts';
import { sumsOf } from '../core/figures.ts';
import { costOf, type PerLb } from '../core/money.ts';
import { poolFigures } from '../core/pool.ts';
import { date, money, name, percent, price, type Reply, say, sayCost, size } from '../core/reply.ts';
import { usableCostInterval } from '../core/sureness.ts';
import { figuresOf, line, provisionalLines } from './card.ts';
import { answered, type Decision, type Intent, refused, type Scene } from './intent.ts';
import { openTestFor, withItem } from './route.ts';

export const askCost: Intent<'askCost'> = {
  slots: ['item', 'price', 'number', 'perPortion', 'each'],
  costs: true,
  decide: (scene, entry: EntryOf<'askCost'>) =>
    withItem(scene, entry, (item) => costOfItem(scene, item, entry)),
};

type Asked = Pick<EntryOf<'askCost'>, 'price' | 'perPortion' | 'each'>;

/** Where a portion was asked for, and its size is known. */
function portionLines(
  scene: Scene,
  item: string,
  { perPortion, each: said }: Asked,
  usable: PerLb,
): readonly Reply[] {
  const test = openTestFor(scene, item);
  const open = test?.item === item ? figuresOf(scene, test) : undefined;
  const each = said ?? sizeOf(scene.kitchen, item) ?? open?.portions?.meanGrams;
  if (perPortion !== true || each === undefined) return [];
  return [sayCost('portion-cost', { size: size(each), cost: money(costOf(each, usable)) })];
}

function costOfItem(scene: Scene, item: string, asked: Asked): Decision {
  const { price: at } = asked;
  const known = priceOf(scene.kitchen, item, scene.at);
  const pricePerLb = at ?? known?.perLb;
  const pool = poolOf(scene.kitchen, item);
  const pooled = poolFigures(pool, { pricePerLb });
  if (pooled === undefined) return fromOpenTest(scene, item, asked);
  if (pricePerLb === undefined || pooled.costs === undefined)
    return answered(
      line(
        say('no-price', { item: name(item) }),
        say('yield-pooled', { share: percent(pooled.yieldPct), tests: pooled.tests }),
      ),
    );
  const args = { item: name(item), cost: price(pooled.costs.usableCostPerLb), price: price(pricePerLb) };
  const behind: Reply[] = [say('yield-pooled', { share: percent(pooled.yieldPct), tests: pooled.tests })];
  const sure = usableCostInterval(pool, pricePerLb);
  // First, beside the cost that it is of: the loaded cost lies outside of it.
  const likely =
    sure === undefined ? [] : [sayCost('cost-interval', { low: price(sure.low), high: price(sure.high) })];
  if (at === undefined && known !== undefined) behind.push(say('price-of', { date: date(known.at) }));
  if (at === undefined && known?.supplier !== undefined)
    behind.push(sayCost('from-supplier', { supplier: known.supplier }));
  if (pool.newestClosedAt !== undefined) behind.push(say('newest-test', { date: date(pool.newestClosedAt) }));
  const loaded = pooled.costs.loadedCostPerLb.eq(pooled.costs.usableCostPerLb)
    ? []
    : [sayCost('loaded-cost', { what: loadedWith(pool), cost: price(pooled.costs.loadedCostPerLb) })];
  const whatIf = at === undefined ? [] : [say('nothing-changed')];
  return answered(
    sayCost(at === undefined ? 'cost-now' : 'cost-at', args),
    ...portionLines(scene, item, asked, pooled.costs.usableCostPerLb),
    line(...likely, ...loaded, ...behind, ...whatIf),
  );
}

const loadedWith = ({ packing, avoidableLabor, fixedLabor }: Sums): string =>
  packing.isZero() ? 'labor' : avoidableLabor.plus(fixedLabor).isZero() ? 'packing' : 'both';

/** Nothing closed yet: what the open test says so far, or that nothing is known. */
function fromOpenTest(scene: Scene, item: string, asked: Asked): Decision {
  const { price: at } = asked;
  const test = openTestFor(scene, item);
  const figure = test?.item === item ? figuresOf(scene, test) : undefined;
  const provisional = figure === undefined ? [] : provisionalLines(figure);
  if (figure === undefined || provisional.length > 0) return answeredOr(item, provisional);
  const { portions, receivedGrams } = figure;
  const pricePerLb = at ?? figure.pricePerLb;
  if (portions === undefined || figure.overweight || pricePerLb === undefined) return answeredOr(item, []);
  const { usableCostPerLb } = costsPerLb(sumsOf(figure, portions.grams), costOf(receivedGrams, pricePerLb));
  const args = { item: name(item), cost: price(usableCostPerLb), price: price(pricePerLb) };
  return answered(
    line(sayCost('cost-so-far', args), say('open-test-only')),
    ...portionLines(scene, item, asked, usableCostPerLb),
  );
}

const answeredOr = (item: string, lines: readonly Reply[]): Decision =>
  lines.length > 0
    ? answered(say('balance-first', { item: name(item) }), ...lines)
    : refused(say('no-tests-yet', { item: name(item) }));

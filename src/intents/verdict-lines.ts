// Cut or buy, in words: what is cheaper and by how much, how sure, what was counted, and what would turn it.
import { decimal, type Decimal } from '../core/decimal.ts';
import { poolOf, priceOf, readyCutOf } from '../core/kitchen.ts';
import { list, money, name, percent, price, type Reply, say, sayCost } from '../core/reply.ts';
import type { Test } from '../core/test.ts';
import { itemVerdict, testVerdict, type Verdict } from '../core/verdict.ts';
import { figuresOf } from './card.ts';
import type { Scene } from './intent.ts';
import { newest } from './route.ts';

/** The verdict of an item: of its open or newest test where there is no more than that, else of all its closed tests. */
export function verdictLines(scene: Scene, item: string, at?: Decimal): readonly Reply[] {
  const test = newest(scene, (each) => each.item === item && each.status !== 'dropped');
  const pool = poolOf(scene.kitchen, item);
  if (pool.tests === 0) return at === undefined && test !== undefined ? testVerdictLines(scene, test) : [sayCost('verdict-no-tests', { item: name(item) })];
  const pricePerLb = at ?? priceOf(scene.kitchen, item)?.perLb;
  const verdict = itemVerdict({ pool, pricePerLb, readyCutPerLb: readyCutOf(scene.kitchen, item)?.perLb });
  return words(verdict, item);
}

export function testVerdictLines(scene: Scene, test: Test): readonly Reply[] {
  const readyCutPerLb = readyCutOf(scene.kitchen, test.item)?.perLb;
  const verdict = testVerdict({ figures: figuresOf(scene, test), readyCutPerLb, pool: poolOf(scene.kitchen, test.item) });
  return words(verdict, test.item);
}

function words(verdict: Verdict, item: string): readonly Reply[] {
  const { choice, savingPerLb, readyCutPerLb, breakEvenReadyCutPerLb: cost } = verdict;
  if (choice === 'unknown' || savingPerLb === undefined || readyCutPerLb === undefined || cost === undefined) {
    const missing = verdict.missing.map((gap) => say(`missing-${gap}`));
    return [sayCost('verdict-unknown', { item: name(item), missing: list(missing) })];
  }
  const args = { item: name(item), saving: price(savingPerLb.abs()), readyCut: price(readyCutPerLb), cost: price(cost) };
  const cheaper = savingPerLb.isNegative() ? 'verdict-close-buy' : 'verdict-close-cut';
  return [
    sayCost(choice === 'close' ? cheaper : choice === 'cut' ? 'verdict-cut' : 'verdict-buy', args),
    ...(verdict.portionContradicts && verdict.savingPerPortion !== undefined ? [contradiction(verdict.savingPerPortion)] : []),
    ...turningPoints(verdict),
    say('line', { of: list([...sureness(verdict), ...inventory(verdict)], 'space') }),
  ];
}

const contradiction = (saving: Decimal): Reply =>
  sayCost(saving.isNegative() ? 'verdict-portion-buy' : 'verdict-portion-cut', { saving: money(saving.abs()) });

function turningPoints({ breakEvenPricePerLb, breakEvenReadyCutPerLb, breakEvenYieldPct, yieldPct }: Verdict): readonly Reply[] {
  const points: Reply[] = [];
  if (breakEvenPricePerLb !== undefined) points.push(breakEvenPricePerLb.gt(0) ? sayCost('turn-price', { price: price(breakEvenPricePerLb) }) : sayCost('turn-price-never'));
  if (breakEvenReadyCutPerLb !== undefined) points.push(sayCost('turn-ready-cut', { price: price(breakEvenReadyCutPerLb) }));
  if (breakEvenYieldPct !== undefined && yieldPct !== undefined) points.push(turnYield(breakEvenYieldPct, yieldPct));
  return points.length === 0 ? [] : [sayCost('turns', { points: list(points) })];
}

const ALL = decimal('100');

const turnYield = (even: Decimal, now: Decimal): Reply =>
  even.gt(ALL) || !even.gt(0) ? sayCost('turn-yield-never', { now: percent(now) }) : sayCost('turn-yield', { yield: percent(even), now: percent(now) });

function sureness({ tests }: Verdict): readonly Reply[] {
  return [tests === 1 ? sayCost('first-look') : sayCost('several-tests', { tests })];
}

function inventory({ counted, leftOut }: Verdict): readonly Reply[] {
  const lists = [
    ['counted', ['purchase', ...counted]],
    ['left-out', leftOut],
  ] as const;
  return lists.flatMap(([id, kinds]) => (kinds.length === 0 ? [] : [sayCost(id, { kinds: list(kinds.map((kind) => say(`kind-${kind}`))) })]));
}

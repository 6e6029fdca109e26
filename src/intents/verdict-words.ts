// What a verdict says: what is cheaper and by how much, what was counted, what would turn it.
import { decimal, type Decimal } from '../core/decimal.ts';
import { list, money, name, percent, price, type Reply, say, sayCost } from '../core/reply.ts';
import type { Verdict } from '../core/verdict.ts';

const ALL = decimal('100');

/** `savings`: what it comes to beyond a pound. */
export function verdictWords(verdict: Verdict, item: string, savings: readonly Reply[]): readonly Reply[] {
  const { choice, savingPerLb, readyCutPerLb, breakEvenReadyCutPerLb: cost } = verdict;
  if (
    choice === 'unknown' ||
    savingPerLb === undefined ||
    readyCutPerLb === undefined ||
    cost === undefined
  ) {
    const missing = verdict.missing.map((gap) => say(`missing-${gap}`));
    return [sayCost('verdict-unknown', { item: name(item), missing: list(missing) })];
  }
  const args = {
    item: name(item),
    saving: price(savingPerLb.abs()),
    readyCut: price(readyCutPerLb),
    cost: price(cost),
  };
  const cheaper = savingPerLb.isNegative() ? 'verdict-close-buy' : 'verdict-close-cut';
  return [
    sayCost(choice === 'close' ? cheaper : choice === 'cut' ? 'verdict-cut' : 'verdict-buy', args),
    ...(verdict.portionContradicts && verdict.savingPerPortion !== undefined
      ? [contradiction(verdict.savingPerPortion)]
      : []),
    ...savings,
    ...otherLaborLines(verdict),
    ...turningPoints(verdict),
    say('line', { of: list([...sureness(verdict), ...inventory(verdict)], 'space') }),
  ];
}

const contradiction = (saving: Decimal): Reply =>
  sayCost(saving.isNegative() ? 'verdict-portion-buy' : 'verdict-portion-cut', {
    saving: money(saving.abs()),
  });

/** The answer with labour counted the other way, where that is another one. */
function otherLaborLines({ otherLabor: other }: Verdict): readonly Reply[] {
  if (other === undefined) return [];
  const args = {
    choice: other.choice,
    by: other.savingPerLb.isNegative() ? 'buy' : 'cut',
    saving: price(other.savingPerLb.abs()),
  };
  return [sayCost(other.isCounted ? 'with-labor-counted' : 'with-labor-fixed', args)];
}

function turningPoints({
  breakEvenPricePerLb,
  breakEvenReadyCutPerLb,
  breakEvenYieldPct,
  yieldPct,
}: Verdict): readonly Reply[] {
  const points: Reply[] = [];
  if (breakEvenPricePerLb !== undefined)
    points.push(
      breakEvenPricePerLb.gt(0)
        ? sayCost('turn-price', { price: price(breakEvenPricePerLb) })
        : sayCost('turn-price-never'),
    );
  if (breakEvenReadyCutPerLb !== undefined)
    points.push(sayCost('turn-ready-cut', { price: price(breakEvenReadyCutPerLb) }));
  if (breakEvenYieldPct !== undefined && yieldPct !== undefined)
    points.push(turnYield(breakEvenYieldPct, yieldPct));
  return points.length === 0 ? [] : [sayCost('turns', { points: list(points) })];
}

const turnYield = (even: Decimal, now: Decimal): Reply =>
  even.gt(ALL) || !even.gt(0)
    ? sayCost('turn-yield-never', { now: percent(now) })
    : sayCost('turn-yield', { yield: percent(even), now: percent(now) });

function sureness({ tests }: Verdict): readonly Reply[] {
  return [tests === 1 ? sayCost('first-look') : sayCost('several-tests', { tests })];
}

function inventory({ counted, leftOut }: Verdict): readonly Reply[] {
  const lists = [
    ['counted', ['purchase', ...counted]],
    ['left-out', leftOut],
  ] as const;
  return lists.flatMap(([id, kinds]) =>
    kinds.length === 0 ? [] : [sayCost(id, { kinds: list(kinds.map((kind) => say(`kind-${kind}`))) })],
  );
}

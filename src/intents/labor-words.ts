// Labour and packing of a test, in words.
import type { Decimal } from '../core/decimal.ts';
import type { Figures } from '../core/figures.ts';
import { list, money, number, price, type Reply, say, sayCost } from '../core/reply.ts';

/** Minutes and packing, as far as they were said. */
export function laborLines({ labor, packingCost }: Figures): readonly Reply[] {
  const lines: Reply[] = [];
  if (labor.minutes !== undefined) lines.push(minutesWords(labor.minutes, labor.cost));
  if (packingCost !== undefined) lines.push(sayCost('packing-cost', { cost: money(packingCost) }));
  return lines.length === 0 ? [] : [say('line', { of: list(lines) })];
}

export function minutesWords(said: Decimal, cost: Decimal | undefined): Reply {
  const minutes = number(said, 1);
  return cost === undefined
    ? say('labor-no-rate', { minutes })
    : sayCost('labor', { minutes, cost: money(cost) }, say('minutes', { minutes }));
}

/** The same with labour and packing, where they were said. */
export function loadedCosts({ costs, labor, packingCost }: Figures): readonly Reply[] {
  if (costs === undefined || (labor.cost === undefined && packingCost === undefined)) return [];
  return [
    sayCost('loaded-cost', { what: loadedWith({ labor, packingCost }), cost: price(costs.loadedCostPerLb) }),
  ];
}

export const loadedWith = ({
  labor,
  packingCost,
}: Pick<Figures, 'labor' | 'packingCost'>): 'labor' | 'packing' | 'both' =>
  labor.cost === undefined ? 'packing' : packingCost === undefined ? 'labor' : 'both';

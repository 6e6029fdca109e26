// "ribeye history": the newest closed tests of an item, one line each.
import { decimal } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import { date, list, name, percent, price, type Reply, say, sayCost, weight } from '../core/reply.ts';
import { answered, type Intent, type PastTest, refused } from './intent.ts';
import { withItem } from './route.ts';

/** How many tests are shown. */
const SHOWN = 5;

export const askHistory: Intent<'askHistory'> = {
  slots: ['item'],
  decide: (scene, entry: EntryOf<'askHistory'>) =>
    withItem(scene, entry, (item) => {
      const past = scene.past.filter((test) => test.item === item).slice(0, SHOWN);
      if (past.length === 0) return refused(say('no-tests-yet', { item: name(item) }));
      return answered(say('history-of', { item: name(item), tests: past.length }), ...past.map(pastLine));
    }),
};

function pastLine({ closedAt, figures = {} }: PastTest): Reply {
  const { receivedGrams, yieldPct, usableCostPerLb, flagged } = figures;
  const parts: Reply[] = [];
  if (receivedGrams !== undefined) parts.push(say('weight', { weight: weight(decimal(receivedGrams)) }));
  if (yieldPct !== undefined) parts.push(say('yield', { share: percent(decimal(yieldPct)) }));
  if (usableCostPerLb !== undefined)
    parts.push(sayCost('usable-cost', { cost: price(decimal(usableCostPerLb)) }));
  if (flagged !== undefined) parts.push(say('does-not-balance'));
  return say('on-date', { date: date(closedAt ?? ''), of: list(parts) });
}

// "how many 14s out of 11.3": whole portions of a size, and what is over.
import type { EntryOf } from '../core/entry.ts';
import { portionsFrom } from '../core/order.ts';
import { say, size, weight } from '../core/reply.ts';
import { answered, type Intent } from './intent.ts';

export const askPlan: Intent<'askPlan'> = {
  slots: ['weight', 'each', 'item'],
  decide: (_scene, { weight: grams, each }: EntryOf<'askPlan'>) => {
    const count = portionsFrom(grams, each);
    return answered(say('plan', { count, size: size(each), weight: weight(grams), over: size(grams.minus(each.times(count))) }));
  },
};

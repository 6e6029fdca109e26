// What was heard, and not well enough to record: the entry is put as a question. A yes or a press takes it as it is; it is
// then decided like any other entry, so that what is implausible is still asked.
import { decimal } from '../core/decimal.ts';
import type { Entry } from '../core/entry.ts';
import { priceOf } from '../core/kitchen.ts';
import { perLbOf } from '../core/money.ts';
import { type Reply, say } from '../core/reply.ts';
import { type Asked, lacking, type Scene } from './intent.ts';

const HEARD = 'ask-heard';

export const isHeardAsk = ({ id }: Reply): boolean => id === HEARD;

const FAR = decimal('1.4');

/** A price that is far from the one before is as likely another number: "eighty oh five" for "eight oh five". */
export function isStartling({ kitchen, at }: Scene, entry: Entry): boolean {
  if ((entry.kind !== 'receive' && entry.kind !== 'price') || entry.item === undefined) return false;
  const known = priceOf(kitchen, entry.item, at)?.perLb;
  const cost =
    entry.kind === 'receive' && entry.cost !== undefined ? perLbOf(entry.cost, entry.weight) : undefined;
  const price = entry.price ?? cost;
  if (known === undefined || price === undefined) return false;
  return price.gt(known.times(FAR)) || known.gt(price.times(FAR));
}

/** What an entry may measure. Where it measures one thing, a bare number puts that right; of several it can't be told. */
const MEASURES = [
  'weight',
  'count',
  'each',
  'price',
  'cost',
  'credit',
  'priceEach',
  'minutes',
  'rate',
  'costEach',
];

export function doubt(entry: Entry, words: string): Asked {
  const measured = MEASURES.filter((slot) => slot in entry);
  const [slot] = measured;
  const wants = slot === undefined || measured.length > 1 ? undefined : lacking(entry, slot);
  return {
    asked: say(HEARD, { words }),
    choices: { yes: entry },
    wants,
    again: { said: entry, accepts: entry },
  };
}

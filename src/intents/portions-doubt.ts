// "steaks are 14 oz" where twelve of 14 oz are known: what each weighs, or all of them?
import type { EntryOf } from '../core/entry.ts';
import { commonSize } from '../core/portions.ts';
import { say, size, weight as weightOf } from '../core/reply.ts';
import { countOf, type Test } from '../core/test.ts';
import { askedOf } from './card.ts';
import { asks, type Decision, type Scene } from './intent.ts';

type Said = EntryOf<'portions'>;

/** Assumption: no cutter is off by so many times in all. */
const FAR = 2;

/** A weight that is not what so many of that size come to; undefined where it may be, or where too little is known. */
export function portionsDoubt(scene: Scene, test: Test, entry: Said): Decision | undefined {
  const { portions } = test;
  const { weight, sure, count = countOf(portions), each = commonSize(portions.batches) } = entry;
  if (weight === undefined || sure === true || count === undefined || count < 2 || each === undefined)
    return undefined;
  const due = each.times(count);
  const isNear = (one: typeof due, other: typeof due): boolean =>
    one.lte(other.times(FAR)) && other.lte(one.times(FAR));
  if (isNear(weight, due)) return undefined;
  const total: Said = { ...entry, sure: true };
  const args = { count, size: size(each), due: weightOf(due), weight: weightOf(weight) };
  const again = { said: entry, accepts: total };
  if (!isNear(weight, each))
    return asks(askedOf(scene, test, say('ask-portions-weight', args)), { choices: { yes: total }, again });
  const { weight: _, ...rest } = entry;
  return asks(askedOf(scene, test, say('ask-portions-each-or-total', args)), {
    choices: { each: { ...rest, each: weight }, total },
    again,
  });
}

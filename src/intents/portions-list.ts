// Portions said beside a list of single weights: a list beats a total, so what would change nothing is asked about.
import { sum } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import type { Fact } from '../core/facts.ts';
import { OVERWEIGHT_TOLERANCE } from '../core/figures.ts';
import { commonSize } from '../core/portions.ts';
import { say, weight as weightOf } from '../core/reply.ts';
import { countOf, type Test } from '../core/test.ts';
import { askedOf, figuresOf } from './card.ts';
import { asks, type Decision, lacking, recorded, type Scene } from './intent.ts';
import { respondPortions } from './portions-reply.ts';

type Said = EntryOf<'portions'>;

/** A count below the length of the list, or a total other than what the whole list comes to: on top, or in its place? */
export function besideList(scene: Scene, test: Test, entry: Said): Decision | undefined {
  const { list } = test.portions;
  const { count = countOf(test.portions), weight } = entry;
  if (list.length === 0 || (count !== undefined && list.length < count)) return undefined;
  const listed = { listed: list.length, total: weightOf(sum(list)) };
  if (entry.count !== undefined && list.length > entry.count)
    return addOrAnew(scene, test, entry, say('ask-list-or-count', { ...listed, count: entry.count }));
  if (weight === undefined || weight.minus(sum(list)).abs().lte(OVERWEIGHT_TOLERANCE)) return undefined;
  return addOrAnew(scene, test, entry, say('ask-list-or-total', { ...listed, weight: weightOf(weight) }));
}

function addOrAnew(scene: Scene, test: Test, entry: Said, asked: ReturnType<typeof say>): Decision {
  const { portions } = test;
  const known = { count: entry.count ?? countOf(portions), each: entry.each ?? commonSize(portions.batches) };
  const replace: Said = { ...entry, ...known, told: true, anew: true };
  const add: Said = { ...entry, mode: 'add', told: true };
  const choices = { add, replace };
  return asks(askedOf(scene, test, asked), { choices, again: { said: entry, accepts: replace } });
}

/** More portions beside a list: those on the list are counted first, so that all are; undefined where there is none. */
export function morePortions(scene: Scene, test: Test, entry: Said): Decision | undefined {
  const { list, grams } = test.portions;
  if (list.length === 0) return undefined;
  const { count, weight } = entry;
  if (count === undefined && weight !== undefined)
    return asks(askedOf(scene, test, say('ask-how-many', { weight: weightOf(weight) })), {
      wants: lacking(entry, 'count'),
    });
  const known = grams ?? figuresOf(scene, test).portions?.grams;
  const counted: Fact = {
    type: 'portioned',
    mode: 'set',
    count: countOf(test.portions) === undefined ? list.length : undefined,
    grams: weight === undefined ? undefined : known,
  };
  const more: Fact = { type: 'portioned', mode: 'add', count, eachGrams: entry.each, grams: weight };
  const facts = [counted, more].map((fact) => ({ test: test.id, item: test.item, fact }));
  return recorded(facts, (now) => respondPortions(now, test));
}

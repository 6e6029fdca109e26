// Which pools a closed test counts in: that of its item, and those of its item from one supplier, by one cutter, and of
// each part that came off. Kept as sums, so that the hundred-thousandth test is asked about as quickly as the tenth.
import { roundTo, ZERO } from './decimal.ts';
import { type CostSettings, figures } from './figures.ts';
import type { Kitchen } from './kitchen.ts';
import { contribution, type Pool } from './pool.ts';
import type { Grams } from './quantity.ts';
import { standingFacts, type Test } from './test.ts';

/** By what the tests of an item are told apart. */
export type Grouping = 'supplier' | 'cutter';

// No name has a line break in it, so that no item can look like the key of a group.
const groupKey = (item: string, by: Grouping | 'part', name: string): string => `${item}\n${by}\n${name}`;

/** What a test brings to each pool, by the pool's key. */
export function contributions(test: Test, settings: CostSettings): readonly (readonly [key: string, Pool])[] {
  const whole = contribution(test, settings);
  if (whole === undefined) return [];
  const { item, received } = test;
  const bySupplier =
    received.supplier === undefined ? [] : [[groupKey(item, 'supplier', received.supplier), whole] as const];
  const byPart = figures(test, settings).parts.map(
    ({ part, grams }) => [groupKey(item, 'part', part), shareOf(whole, grams)] as const,
  );
  return [[item, whole], [groupKey(item, 'cutter', cutterOf(test)), whole], ...bySupplier, ...byPart];
}

/** Who told its portions last cut it; who opened the test may only have taken the piece in. */
export const cutterOf = ({ facts, openedBy }: Test): string =>
  standingFacts(facts).findLast(({ fact }) => fact.type === 'portioned' || fact.type === 'listed')?.recorded
    .speaker ?? openedBy;

/** A pool in which the weight of one part stands where that of the portions does: its yield is the part's share. */
function shareOf(whole: Pool, grams: Grams): Pool {
  const share = roundTo(grams.div(whole.receivedGrams), 15);
  const sums = { portionGrams: roundTo(grams, 20), yields: share, squaredYields: roundTo(share.pow(2), 30) };
  return { ...whole, ...sums, credit: ZERO, avoidableLabor: ZERO, fixedLabor: ZERO, packing: ZERO };
}

/** The pools of an item told apart, by name, those without a test left out. */
export function groupsOf(
  { pools }: Kitchen,
  item: string,
  by: Grouping,
): readonly (readonly [name: string, Pool])[] {
  const begins = groupKey(item, by, '');
  return [...pools]
    .filter(([key, { tests }]) => key.startsWith(begins) && tests > 0)
    .map(([key, pool]) => [key.slice(begins.length), pool] as const)
    .sort(([one], [other]) => (one < other ? -1 : 1));
}

/**
 * Whether the tests of an item fall into the same groups by supplier as by cutter: each supplier's pieces were cut by one
 * cutter who cut no other's, so that nothing can tell which of the two makes a difference.
 */
export function isSplitAlike(kitchen: Kitchen, item: string): boolean {
  const cutters = groupsOf(kitchen, item, 'cutter');
  const suppliers = groupsOf(kitchen, item, 'supplier');
  return (
    cutters.length === suppliers.length &&
    suppliers.every(([, pool]) => cutters.some(([, other]) => hasSameTests(pool, other)))
  );
}

/** Two pools of the same tests have the same sums; two of others could have only by a rare chance. */
const hasSameTests = (one: Pool, other: Pool): boolean =>
  one.tests === other.tests &&
  one.receivedGrams.eq(other.receivedGrams) &&
  one.portionGrams.eq(other.portionGrams) &&
  one.squaredYields.eq(other.squaredYields);

/** What has come off the closed tests of an item as one part, where it was weighed. */
export const partPoolOf = ({ pools }: Kitchen, item: string, part: string): Pool | undefined =>
  pools.get(groupKey(item, 'part', part));

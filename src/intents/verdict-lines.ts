// Cut or buy: the verdict of an item or a test, whether a new price turns it, and what it comes to.
import { decimal, type Decimal } from '../core/decimal.ts';
import { heaviness, readPortionRow } from '../core/heavy.ts';
import { poolOf, priceOf, readyCutOf, sizeOf } from '../core/kitchen.ts';
import { costOf } from '../core/money.ts';
import { date, list, money, name, number, price, type Reply, sayCost, size } from '../core/reply.ts';
import type { Test } from '../core/test.ts';
import { testsPerWeek } from '../core/test-rate.ts';
import { itemVerdict, type PortionAsCut, testVerdict, type Verdict } from '../core/verdict.ts';
import { figuresOf } from './card.ts';
import type { Scene } from './intent.ts';
import { newest } from './route.ts';
import { verdictWords } from './verdict-words.ts';

const ALL = decimal('100');

/** The verdict of an item: of its open or newest test where there is no more than that, else of all its closed tests. */
export function verdictLines(scene: Scene, item: string, at?: Decimal): readonly Reply[] {
  const test = newest(scene, (each) => each.item === item && each.status !== 'dropped');
  const pool = poolOf(scene.kitchen, item);
  if (pool.tests === 0)
    return at === undefined && test !== undefined
      ? testVerdictLines(scene, test)
      : [sayCost('verdict-no-tests', { item: name(item) })];
  const verdict = at === undefined ? verdictNow(scene, item) : verdictAt(scene, item, at);
  return verdictWords(verdict, item, savingLines(scene, item, verdict));
}

/** The verdict of all closed tests of an item at today's price. */
export const verdictNow = (scene: Scene, item: string): Verdict =>
  verdictAt(scene, item, priceOf(scene.kitchen, item, scene.at)?.perLb);

/** The verdict of all closed tests of an item at a price. */
function verdictAt(scene: Scene, item: string, pricePerLb: Decimal | undefined): Verdict {
  const { kitchen } = scene;
  const { laborAvoidable } = kitchen.settings;
  const portion = portionOfLate(scene, item);
  return itemVerdict({
    pool: poolOf(kitchen, item),
    pricePerLb,
    readyCutPerLb: readyCutOf(kitchen, item)?.perLb,
    laborAvoidable,
    portion,
  });
}

/** A portion of the size last cut, as heavy as those of the last weeks were against theirs. */
function portionOfLate({ kitchen, past, at }: Scene, item: string): PortionAsCut {
  const targetGrams = sizeOf(kitchen, item);
  const rows = past.flatMap((test) =>
    test.item === item ? (readPortionRow(test.closedAt ?? '', test.figures ?? {}) ?? []) : [],
  );
  const off = heaviness(rows, at)?.offPct;
  return { targetGrams, meanGrams: off && targetGrams?.times(off.plus(ALL)).div(ALL) };
}

interface NewPrice {
  readonly was: Decimal | undefined;
  readonly is: Decimal;
  /** The instant from which it holds, where that is to come. */
  readonly from?: string;
}

/** Where a new price turns the answer of the closed tests: what it is now, or from a day on. */
export function turnLines(scene: Scene, item: string, { was, is, from }: NewPrice): readonly Reply[] {
  const before = verdictAt(scene, item, was);
  const { choice, savingPerLb } = verdictAt(scene, item, is);
  if (before.choice === 'unknown' || choice === before.choice || savingPerLb === undefined) return [];
  const args = { choice, item: name(item), saving: price(savingPerLb.abs()) };
  return [
    from === undefined
      ? sayCost('verdict-turns', args)
      : sayCost('verdict-turns-from', { ...args, date: date(from) }),
  ];
}

/** Where a new ready-cut price has turned the answer of the closed tests, which is told: what it was. */
export function turnedLines(before: Scene, now: Scene, item: string): readonly Reply[] {
  const [was, is] = [before, now].map(
    (scene) => verdictAt(scene, item, priceOf(scene.kitchen, item, scene.at)?.perLb).choice,
  );
  return was === undefined || was === 'unknown' || was === is
    ? []
    : [sayCost('verdict-was', { choice: was })];
}

/** What the saving comes to for a portion of the size last cut, for a test, and for a week of them as logged of late. */
function savingLines(
  { kitchen, past, at }: Scene,
  item: string,
  { savingPerLb, portionContradicts }: Verdict,
): readonly Reply[] {
  const pool = poolOf(kitchen, item);
  if (savingPerLb === undefined || savingPerLb.isZero() || pool.tests < 2) return [];
  const each = sizeOf(kitchen, item);
  const ofTest = costOf(pool.portionGrams, savingPerLb).div(pool.tests);
  const counted = past.filter(
    (test) =>
      test.item === item &&
      test.figures?.['flagged'] === undefined &&
      test.figures?.['portionGrams'] !== undefined,
  );
  const weekly = testsPerWeek({ pool, closedAt: counted.flatMap(({ closedAt }) => closedAt ?? []), now: at });
  const parts = [sayCost('saving-test', { saving: money(ofTest.abs()) })];
  // A portion as it is cut says the opposite, and is told by itself.
  if (each !== undefined && !portionContradicts)
    parts.unshift(
      sayCost('saving-portion', { size: size(each), saving: money(costOf(each, savingPerLb).abs()) }),
    );
  if (weekly !== undefined)
    parts.push(
      sayCost('saving-week', { saving: money(ofTest.times(weekly).abs()), tests: number(weekly, 1) }),
    );
  return [sayCost(savingPerLb.isNegative() ? 'saving-buy' : 'saving-cut', { parts: list(parts) })];
}

export function testVerdictLines(scene: Scene, test: Test): readonly Reply[] {
  const readyCutPerLb = readyCutOf(scene.kitchen, test.item)?.perLb;
  const verdict = testVerdict({
    figures: figuresOf(scene, test),
    readyCutPerLb,
    pool: poolOf(scene.kitchen, test.item),
  });
  return verdictWords(verdict, test.item, []);
}

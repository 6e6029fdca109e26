// The summary: it fits the screen of a phone. What was cut, how it yielded against what is usual, what it costs now, portions off
// their size, verdicts that turned, what is still open, what nobody heard.
import { ringing } from '../core/alarm.ts';
import { decimal, type Decimal, ZERO } from '../core/decimal.ts';
import { type Kitchen, openTests, poolOf } from '../core/kitchen.ts';
import { lotsWithoutPass } from '../core/lot-dues.ts';
import type { Lot } from '../core/lots.ts';
import { poolFigures } from '../core/pool.ts';
import { list, name, percent, price, type Reply, say, sayCost, size, weight } from '../core/reply.ts';
import { isOnTarget } from '../core/costs.ts';
import { DAY_MS } from '../core/local-time.ts';
import { lateReminders } from '../core/reminder.ts';
import { dues, type DuesOf } from '../core/schedule.ts';
import { checksIn, isOff } from '../core/thermometer-checks.ts';
import { line } from './card.ts';
import type { PastDays, PastTest } from './intent.ts';

/** Lines of further things worth knowing at the end of the day, from whoever keeps them. */
type MoreLines = (kitchen: Kitchen, days: PastDays, duesOf: DuesOf) => readonly Reply[];
const MORE: readonly MoreLines[] = [stillOpen, lots, thermometers, unheard, late];

/** The lines below the heading. */
export function summaryLines(kitchen: Kitchen, days: PastDays, duesOf: DuesOf = dues): readonly Reply[] {
  const cut =
    days.tests.length === 0
      ? [say('summary-nothing', { open: openTests(kitchen).length === 0 ? 'none' : 'some' })]
      : cutLines(kitchen, days);
  return [...cut, ...turned(days), ...MORE.flatMap((more) => more(kitchen, days, duesOf))];
}

/** So many cuts, verdicts, and names in a line: more does not fit the screen of a phone. */
const MOST_ITEMS = 4;

function cutLines(kitchen: Kitchen, { tests }: PastDays): readonly Reply[] {
  const items = new Map<string, PastTest[]>();
  for (const test of tests) items.set(test.item, [...(items.get(test.item) ?? []), test]);
  const shown = [...items]
    .sort(([, a], [, b]) => sum(b, 'receivedGrams').cmp(sum(a, 'receivedGrams')))
    .slice(0, MOST_ITEMS);
  const left = items.size - shown.length;
  return [
    line(
      say('summary-pieces', { count: piecesIn(tests) }),
      say('weight', { weight: weight(sum(tests, 'receivedGrams')) }),
    ),
    ...shown.map(([item, of]) => itemLine(kitchen, item, of)),
    ...(left === 0 ? [] : [say('summary-more', { count: left })]),
  ];
}

const figureOf = ({ figures = {} }: PastTest, key: string): Decimal | undefined => {
  const text = figures[key];
  return text === undefined ? undefined : decimal(text);
};

const sum = (tests: readonly PastTest[], key: string): Decimal =>
  tests.reduce((total, test) => total.plus(figureOf(test, key) ?? ZERO), ZERO);

/** A test of which nobody said how many pieces it was is one. */
const piecesIn = (tests: readonly PastTest[]): number =>
  tests.reduce((total, { figures = {} }) => total + Number(figures['pieces'] ?? '1'), 0);

function itemLine(kitchen: Kitchen, item: string, tests: readonly PastTest[]): Reply {
  const parts = [...yieldWords(kitchen, item, tests), ...costWords(tests), ...portionWords(tests)];
  const of = parts.length === 0 ? [say('weight', { weight: weight(sum(tests, 'receivedGrams')) })] : parts;
  return say('of-item', { item: name(item), of: list(of) });
}

/** By weight, over those that balance and have their portions weighed. */
function yieldWords(kitchen: Kitchen, item: string, tests: readonly PastTest[]): readonly Reply[] {
  const whole = tests.filter(
    (test) => figureOf(test, 'portionGrams') !== undefined && test.figures?.['flagged'] === undefined,
  );
  if (whole.length === 0) return [];
  const share = sum(whole, 'portionGrams').times(100).div(sum(whole, 'receivedGrams'));
  const usual = poolFigures(poolOf(kitchen, item), {});
  const isFirst = usual === undefined || usual.tests <= whole.length;
  return [
    isFirst
      ? say('yield', { share: percent(share) })
      : say('yield-usual', { share: percent(share), usual: percent(usual.yieldPct) }),
  ];
}

/** What a pound came to in the newest test. */
function costWords(tests: readonly PastTest[]): readonly Reply[] {
  const cost = tests.flatMap((test) => figureOf(test, 'usableCostPerLb') ?? []).at(-1);
  return cost === undefined ? [] : [sayCost('usable-cost', { cost: price(cost) })];
}

function portionWords(tests: readonly PastTest[]): readonly Reply[] {
  const count = Number(sum(tests, 'count'));
  const off = tests.flatMap((test) => {
    const [mean, target] = [figureOf(test, 'meanGrams'), figureOf(test, 'targetGrams')];
    return mean === undefined || target === undefined || isOnTarget(mean, target) ? [] : [{ mean, target }];
  });
  const worst = off.toSorted((a, b) => b.mean.div(b.target).cmp(a.mean.div(a.target)))[0];
  return [
    ...(count === 0 ? [] : [say('portions-count', { count })]),
    ...(worst === undefined
      ? []
      : [
          say(worst.mean.gt(worst.target) ? 'summary-heavy' : 'summary-light', {
            mean: size(worst.mean),
            size: size(worst.target),
          }),
        ]),
  ];
}

/** From what held before to what holds at the end, whether a test or a ready-cut price turned it. */
function turned({ choices }: PastDays): readonly Reply[] {
  const turns = new Map<string, { readonly before: string; readonly now: string; readonly items: Reply[] }>();
  for (const [item, of] of choices) {
    const [before = '', now = ''] = [of[0], of.at(-1)];
    const turn = turns.get(`${before} ${now}`) ?? { before, now, items: [] };
    turn.items.push(say('item', { item: name(item) }));
    if (before !== now) turns.set(`${before} ${now}`, turn);
  }
  return [...turns.values()].map(({ before, now, items }) =>
    sayCost('summary-turned', { items: few(items), before, now }),
  );
}

/** The first of them, and how many more there are. */
const few = (of: readonly Reply[]): ReturnType<typeof list> => {
  const left = of.length - MOST_ITEMS;
  return list(left > 0 ? [...of.slice(0, MOST_ITEMS), say('and-more', { count: left })] : of);
};

function stillOpen(kitchen: Kitchen): readonly Reply[] {
  const open = openTests(kitchen).map(({ item }) => say('item', { item: name(item) }));
  return open.length === 0 ? [] : [say('summary-open', { items: few(open) })];
}

/** Lots that are open or were ground in these days, and lack a passing temperature for what was cooked of them. */
function lots(kitchen: Kitchen, { stretch }: PastDays): readonly Reply[] {
  const found = lotsWithoutPass(kitchen).filter(
    ({ status, openedAt }) => openedAt < stretch.to && (status === 'open' || openedAt >= stretch.from),
  );
  const none = found.filter(({ batches }) => !batches.some(({ passed }) => passed));
  const some = found.filter((lot) => !none.includes(lot));
  return [...lotsLine('summary-lots', none), ...lotsLine('summary-lots-batch', some)];
}

const lotsLine = (id: string, found: readonly Lot[]): readonly Reply[] =>
  found.length === 0
    ? []
    : [say(id, { lots: few(found.map((lot) => say('grind-of', { lot: lot.id, part: name(lot.part) }))) })];

/** Of one day only what was off; of more days how many there were. */
function thermometers({ memory }: Kitchen, { stretch: { from, to } }: PastDays): readonly Reply[] {
  const checks = checksIn(memory).filter(({ at }) => at >= from && at < to);
  const off = checks.filter(isOff).length;
  const isDay = Date.parse(to) - Date.parse(from) < 2 * DAY_MS;
  return checks.length === 0 || (isDay && off === 0)
    ? []
    : [say('summary-checks', { count: checks.length, off })];
}

function unheard(kitchen: Kitchen, { at }: PastDays, duesOf: DuesOf): readonly Reply[] {
  const now = Date.parse(at);
  const count = ringing(kitchen, duesOf(kitchen, now), now).length;
  return count === 0 ? [] : [say('summary-unheard', { count })];
}

function late(kitchen: Kitchen, { stretch }: PastDays): readonly Reply[] {
  const count = lateReminders(kitchen, stretch);
  return count === 0 ? [] : [say('summary-late', { count })];
}

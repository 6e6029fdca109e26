// "picture of the ribeye": where the piece went and what a pound costs; "ribeye history chart": yield and cost over time.
import { decimal, type Decimal, HUNDRED, ZERO } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import type { Figures } from '../core/figures.ts';
import { poolOf, readyCutOf } from '../core/kitchen.ts';
import { type Bar, fileName, fullName, type Panel, type PicturePaper } from '../core/paper.ts';
import { perUnit } from '../core/money.ts';
import { poolFigures } from '../core/pool.ts';
import { date, money, name, percent, price, type Reply, say, sayCost, weight } from '../core/reply.ts';
import { tQuantile95 } from '../core/statistics.ts';
import type { Test } from '../core/test.ts';
import type { Verdict } from '../core/verdict.ts';
import { figuresOf } from './card.ts';
import { loadedWith } from './labor-words.ts';
import { type Decision, type Intent, type PastTest, refused, type Scene, withPaper } from './intent.ts';
import { newest, withItem } from './route.ts';
import { verdictNow } from './verdict-lines.ts';

/** The most tests in a picture: more would not be told apart on a phone. */
export const MOST_DRAWN = 40;

export const picture: Intent<'picture'> = {
  slots: ['item', 'view'],
  decide: (scene, entry: EntryOf<'picture'>) =>
    withItem(scene, entry, (item) =>
      entry.view === 'history' ? historyOf(scene, item) : resultOf(scene, item),
    ),
};

function drawn(item: string, paper: PicturePaper): Decision {
  return withPaper(paper, say('drawn', { item: name(item), file: name(fullName(paper)) }));
}

function resultOf(scene: Scene, item: string): Decision {
  const test = newest(scene, (each) => each.item === item && each.status !== 'dropped');
  if (test === undefined) return refused(say('no-tests-yet', { item: name(item) }));
  const figure = figuresOf(scene, test);
  const title = say('picture-test', {
    item: name(item),
    weight: weight(test.received.grams),
    date: date(test.closedAt ?? test.openedAt),
  });
  const panels = [piece(figure, test), ...costs(scene, figure, item)];
  return drawn(item, { is: 'picture', name: fileName(item, 'test'), title, panels });
}

/** Where the piece went; shares of what was received. */
function piece(
  { receivedGrams, parts, portions, unaccountedGrams, unaccountedPct, overweight }: Figures,
  { status }: Test,
): Panel {
  const bar = (
    label: Reply,
    tone: Bar['tone'],
    { grams, share }: { grams: Decimal; share: Decimal },
  ): Bar => ({
    ...{ label, tone, value: grams },
    text: say('bar-weight', { weight: weight(grams), share: percent(share) }),
  });
  const bars: Bar[] = [];
  if (portions !== undefined)
    bars.push(bar(say('bar-portions'), 'portions', { grams: portions.grams, share: portions.yieldPct }));
  for (const { part, role, grams, yieldPct } of parts)
    bars.push(bar(say('item', { item: name(part) }), role, { grams, share: yieldPct }));
  if (unaccountedGrams.gt(ZERO))
    bars.push(
      bar(say(status === 'open' ? 'bar-left' : 'bar-loss'), 'loss', {
        grams: unaccountedGrams,
        share: unaccountedPct,
      }),
    );
  return {
    is: 'bars',
    title: say(overweight ? 'picture-piece-over' : 'picture-piece'),
    bars,
    of: receivedGrams,
  };
}

/** What a pound costs: as bought, as used, ready-cut. Nothing while the weights don't balance. */
function costs(scene: Scene, figure: Figures, item: string): readonly Panel[] {
  const { costs: found, pricePerLb } = figure;
  if (found === undefined || pricePerLb === undefined) return [];
  const readyCut = readyCutOf(scene.kitchen, item)?.perLb;
  const bar = (id: string, perLb: Decimal, tone: Bar['tone'] = 'plain'): Bar => ({
    ...{ label: say(id), tone, value: perLb },
    text: sayCost('bar-price', { price: price(perLb) }),
  });
  const bars = [bar('bar-bought', pricePerLb), bar('bar-usable', found.usableCostPerLb)];
  if (!found.loadedCostPerLb.eq(found.usableCostPerLb))
    bars.push({
      ...bar('bar-loaded', found.loadedCostPerLb),
      label: say('bar-loaded', { what: loadedWith(figure) }),
    });
  if (readyCut !== undefined) bars.push(bar('bar-ready-cut', readyCut, 'other'));
  return [
    { is: 'bars', title: say('picture-costs', { unit: scene.kitchen.settings.unit }), bars, cost: true },
  ];
}

function historyOf(scene: Scene, item: string): Decision {
  // A test that does not balance has a yield that is no yield.
  const past = scene.past
    .filter((test) => test.item === item && test.figures?.['flagged'] === undefined)
    .slice(0, MOST_DRAWN);
  const oldestFirst = past.toReversed();
  const yields = points(oldestFirst, 'yieldPct');
  if (yields.length === 0) return refused(say('no-tests-yet', { item: name(item) }));
  const panels: Panel[] = [
    {
      is: 'trend',
      title: say('picture-yields'),
      points: yields,
      band: bandOf(scene, item),
      tick: (value) => say('bar-share', { share: percent(value) }),
    },
    ...costTrend(scene, item, oldestFirst),
  ];
  const title = say('picture-history', { item: name(item), tests: yields.length });
  return drawn(item, { is: 'picture', name: fileName(item, 'history'), title, panels });
}

/** What a usable pound cost; where a ready-cut price is known, what was held against it, with the answer as it stands now. */
function costTrend(scene: Scene, item: string, past: readonly PastTest[]): readonly Panel[] {
  const { unit } = scene.kitchen.settings;
  // Plain amounts at the axis: the title says of what.
  const tick = (value: Decimal): Reply => sayCost('bar-amount', { amount: money(perUnit(value, unit)) });
  const verdict = verdictNow(scene, item);
  const usable = points(past, 'usableCostPerLb');
  const compared = points(past, 'comparedCostPerLb');
  if (usable.length === 0) return [];
  const { readyCutPerLb } = verdict;
  if (readyCutPerLb === undefined || compared.length !== usable.length)
    return [{ is: 'trend', title: say('picture-usable', { unit }), points: usable, cost: true, tick }];
  const notes = [sayCost('picture-ready-cut', { price: price(readyCutPerLb) }), ...verdictNote(verdict)];
  return [
    {
      is: 'trend',
      title: say('picture-compared'),
      points: compared,
      mark: readyCutPerLb,
      notes,
      cost: true,
      tick,
    },
  ];
}

function verdictNote({ choice, savingPerLb, tests }: Verdict): readonly Reply[] {
  return choice === 'unknown' || savingPerLb === undefined
    ? []
    : [sayCost('picture-verdict', { choice, saving: price(savingPerLb.abs()), tests })];
}

const points = (past: readonly PastTest[], key: string) =>
  past.flatMap(({ closedAt = '', figures }) => {
    const value = figures?.[key];
    return value === undefined
      ? []
      : [{ label: say('bar-date', { date: date(closedAt) }), value: decimal(value) }];
  });

/** Where the mean yield of the pooled tests lies: mean ± t(0.95, n − 1) × s ÷ √n, as in the verdict. */
function bandOf({ kitchen }: Scene, item: string): Extract<Panel, { is: 'trend' }>['band'] {
  const pooled = poolFigures(poolOf(kitchen, item), {});
  if (pooled?.yieldDeviationPct === undefined) return undefined;
  const { tests, meanYieldPct: mean, yieldDeviationPct: spread } = pooled;
  const half = tQuantile95(tests - 1)
    .times(spread)
    .div(decimal(tests.toString()).sqrt());
  const low = mean.minus(half).lt(ZERO) ? ZERO : mean.minus(half);
  const high = mean.plus(half).gt(HUNDRED) ? HUNDRED : mean.plus(half);
  return { low, high, text: say('picture-band', { low: percent(low), high: percent(high), tests }) };
}

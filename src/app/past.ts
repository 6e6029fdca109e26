// What has to be read from the store before a question about the past can be answered.
import type { Entry, Kind } from '../core/entry.ts';
import type { Question } from '../core/question.ts';
import { stretchOf } from '../core/period.ts';
import { foldTest } from '../core/test.ts';
import { MOST_EXPORTED } from '../intents/export.ts';
import type { Scene } from '../intents/intent.ts';
import { MOST_DRAWN } from '../intents/picture.ts';
import { itemFor } from '../intents/route.ts';
import { pastDays } from './past-days.ts';
import type { KitchenId, Store } from './ports/store.ts';
import type { Understood } from './understand.ts';

const PAST_SHOWN = 5;
/** Those of some weeks. */
const OF_LATE = 60;

/** How many of the newest closed tests of its item a kind of entry looks at. */
const LOOKS_AT: { readonly [K in Kind]?: number } = {
  askHistory: PAST_SHOWN,
  askHeavy: OF_LATE,
  askVerdict: OF_LATE,
  readyCut: OF_LATE,
  finish: OF_LATE,
  export: MOST_EXPORTED + 1,
  picture: MOST_DRAWN,
};

export interface Asking {
  readonly scene: Scene;
  readonly question: Question | undefined;
  readonly understood: readonly Understood[];
}

interface Reading {
  readonly store: Store;
  readonly id: KitchenId;
}

/** The scene with the closed tests that are asked about, the newest of them whole where it is to be drawn. */
export async function withPast({ store, id }: Reading, asking: Asking): Promise<Scene> {
  let { scene } = asking;
  const wanted = wantedOf(asking);
  const most = new Map<string, number>();
  for (const { item, count } of wanted) most.set(item, Math.max(count, most.get(item) ?? 0));
  const past = await Promise.all([...most].map(([item, count]) => store.closedTests(id, item, count)));
  for (const [newest] of wanted.some(({ isWhole }) => isWhole) ? past : []) {
    if (newest === undefined || scene.kitchen.tests.has(newest.id)) continue;
    const test = foldTest(await store.testFacts(id, newest.id));
    scene = {
      ...scene,
      kitchen: { ...scene.kitchen, tests: new Map(scene.kitchen.tests).set(test.id, test) },
    };
  }
  return { ...scene, past: past.flat(), ...(await daysAsked({ store, id }, asking)) };
}

/** Of several stretches that are asked for in one line, the last. */
async function daysAsked(
  { store, id }: Reading,
  { understood, scene }: Asking,
): Promise<Pick<Scene, 'days'>> {
  const [period] = understood
    .flatMap((one) => ('entry' in one && one.entry.kind === 'askSummary' ? [one.entry.period] : []))
    .slice(-1);
  if (period === undefined) return {};
  const { at, kitchen } = scene;
  const stretch = stretchOf(period, at, kitchen.settings.timezone);
  return { days: await pastDays({ store, id, kitchen, stretch, at }) };
}

/** Entries that look back, and what answers the question which item one of them is about, or whether it is meant. */
function wantedOf({ scene, question, understood }: Asking) {
  const asked = question?.wants?.slot === 'item' ? (question.wants.held.kind as Kind) : undefined;
  return understood.flatMap((one) => {
    if (!('entry' in one)) return [];
    const { entry } = one;
    const meant = entry.kind === 'yes' ? question?.choices['yes'] : undefined;
    const kind = entry.kind === 'name' ? asked : (meant ?? entry).kind;
    const count = kind && LOOKS_AT[kind];
    const isWhole = kind === 'picture' && !('view' in entry);
    const of = meant ?? entry;
    const item = itemFor(scene, testItem(scene, of) ?? ('item' in of ? of.item : undefined));
    return count === undefined || item === undefined ? [] : [{ item, count, isWhole }];
  });
}

const testItem = ({ kitchen }: Scene, { test }: Entry): string | undefined =>
  test === undefined ? undefined : kitchen.tests.get(test)?.item;

// What one message comes to in the kitchen as it is. Nothing is stored here.
import type { Kind } from '../core/entry.ts';
import type { Kitchen } from '../core/kitchen.ts';
import { stretchOf } from '../core/period.ts';
import { seesCosts } from '../core/role.ts';
import type { Question } from '../core/question.ts';
import type { UsualWeights } from '../core/plausible.ts';
import type { DuesOf } from '../core/schedule.ts';
import type { Bands } from '../core/slip.ts';
import type { PastTest, Scene } from '../intents/intent.ts';
import { itemFor } from '../intents/route.ts';
import type { Listener } from '../language/listen.ts';
import { parse } from '../language/parse.ts';
import { atHand } from './at-hand.ts';
import { converse, type Heeded } from './converse.ts';
import { heedEdit } from './edit.ts';
import { pastDays } from './past-days.ts';
import type { KitchenId, Store } from './ports/store.ts';
import type { Message } from './ports/table.ts';
import { understand, type Understood } from './understand.ts';

export interface Hearing {
  readonly store: Store;
  readonly id: KitchenId;
  readonly usual: UsualWeights;
  readonly bands?: Bands;
  /** What may be due; the kitchen's own where it is not given. */
  readonly duesOf?: DuesOf;
  /** The language with the kitchen's own names in it. */
  readonly listenerFor: (kitchen: Kitchen) => Listener;
}

/** The kitchen in memory; what is read of it from the store is kept. */
export interface State {
  kitchen: Kitchen;
  readonly questions: Map<string, Question>;
}

export async function heed(parts: Hearing, state: State, message: Message): Promise<Heeded> {
  const { speaker, at, role, readBy = role, people, id } = message;
  const question = state.questions.get(speaker);
  const understood = hear(parts, state, message);
  const kitchen = await atHand(parts, state, { message, understood });
  const scene = turnedTo(
    {
      ...{ kitchen, speaker, at, role, people, usual: parts.usual, bands: parts.bands, past: [] },
      ...(parts.duesOf === undefined ? {} : { duesOf: parts.duesOf }),
      seesCosts: seesCosts(readBy, kitchen.settings),
    },
    message,
  );
  const past = await pastTests(parts, understood, scene);
  const days = await daysAsked(parts, understood, scene);
  const conversation = { scene: { ...scene, past, ...days }, question, message: id };
  if (message.replaces !== undefined)
    return heedEdit({ ...conversation, replaces: message.replaces }, understood);
  return converse(conversation, understood);
}

function hear(parts: Hearing, { kitchen, questions }: State, message: Message): readonly Understood[] {
  if (message.pressed !== undefined) return [{ entry: message.pressed }];
  const listener = parts.listenerFor(kitchen);
  const { unit, timezone: zone } = kitchen.settings;
  const heard = parse(listener, message.text, { answering: questions.has(message.speaker) });
  return understand(heard, { unit, clock: { at: message.at, zone }, language: listener.language });
}

/** As if the speaker had last written to the test that the message is about. */
function turnedTo(scene: Scene, { about }: Message): Scene {
  const test = about === undefined ? undefined : scene.kitchen.tests.get(about);
  if (test === undefined) return scene;
  const { kitchen, speaker } = scene;
  const memory = kitchen.speakers.get(speaker) ?? { tests: [], recent: [] };
  const tests = [...memory.tests.filter((each) => each !== test.id), test.id];
  const speakers = new Map(kitchen.speakers).set(speaker, { ...memory, tests });
  return { ...scene, kitchen: { ...kitchen, speakers }, carried: test.item };
}

/** How many closed tests are read for a question: those that a history shows, and those of some weeks. */
const PAST_READ: { readonly [K in Kind]?: number } = { askHistory: 5, askHeavy: 60 };

async function pastTests(
  parts: Hearing,
  understood: readonly Understood[],
  scene: Scene,
): Promise<readonly PastTest[]> {
  const limits = new Map<string, number>();
  for (const one of understood) {
    const limit = 'entry' in one ? PAST_READ[one.entry.kind] : undefined;
    if (limit === undefined || !('entry' in one)) continue;
    const item = itemFor(scene, 'item' in one.entry ? one.entry.item : undefined);
    if (item !== undefined) limits.set(item, Math.max(limit, limits.get(item) ?? 0));
  }
  const rows = await Promise.all(
    [...limits].map(([item, limit]) => parts.store.closedTests(parts.id, item, limit)),
  );
  return rows.flat();
}

/** Of several that are asked for in one line, the last. */
async function daysAsked(
  parts: Hearing,
  understood: readonly Understood[],
  { at, kitchen }: Scene,
): Promise<Pick<Scene, 'days'>> {
  const [period] = understood
    .flatMap((one) => ('entry' in one && one.entry.kind === 'askSummary' ? [one.entry.period] : []))
    .slice(-1);
  if (period === undefined) return {};
  return { days: await pastDays(parts.store, parts.id, stretchOf(period, at, kitchen.settings.timezone)) };
}

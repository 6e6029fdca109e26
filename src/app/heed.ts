// What one message comes to in the kitchen as it is. Nothing is stored here.
import { type Kitchen } from '../core/kitchen.ts';
import { seesCosts } from '../core/role.ts';
import type { Question } from '../core/question.ts';
import type { UsualWeights } from '../core/plausible.ts';
import type { Bands } from '../core/slip.ts';
import type { PastTest, Scene } from '../intents/intent.ts';
import { itemFor } from '../intents/route.ts';
import type { Listener } from '../language/listen.ts';
import { parse } from '../language/parse.ts';
import { atHand } from './at-hand.ts';
import { converse, type Heeded } from './converse.ts';
import { isSure } from './heard.ts';
import { heedEdit } from './edit.ts';
import type { KitchenId, Store } from './ports/store.ts';
import type { Message } from './ports/table.ts';
import { understand, type Understood } from './understand.ts';

export interface Hearing {
  readonly store: Store;
  readonly id: KitchenId;
  readonly usual: UsualWeights;
  readonly bands?: Bands;
  /** The language with the kitchen's own names in it. */
  readonly listenerFor: (kitchen: Kitchen) => Listener;
}

/** The kitchen in memory; what is read of it from the store is kept. */
export interface State {
  kitchen: Kitchen;
  readonly questions: Map<string, Question>;
}

export async function heed(parts: Hearing, state: State, message: Message): Promise<Heeded> {
  const { speaker, at, role, readBy = role, id } = message;
  const question = state.questions.get(speaker);
  const understood = hear(parts, state, message);
  const kitchen = await atHand(parts, state, { message, understood });
  const scene = turnedTo(
    {
      ...{ kitchen, speaker, at, role, usual: parts.usual, bands: parts.bands, past: [] },
      seesCosts: seesCosts(readBy, kitchen.settings),
    },
    message,
  );
  const past = await pastTests(parts, understood, scene);
  const heard = message.heard && { words: message.text, isSure: isSure(message.heard) };
  const conversation = { scene: { ...scene, past }, question, message: id, heard };
  if (message.replaces !== undefined)
    return heedEdit({ ...conversation, replaces: message.replaces }, understood);
  return converse(conversation, understood);
}

function hear(parts: Hearing, { kitchen, questions }: State, message: Message): readonly Understood[] {
  if (message.pressed !== undefined) return [{ entry: message.pressed }];
  const heard = parse(parts.listenerFor(kitchen), message.text, {
    answering: questions.has(message.speaker),
  });
  return understand(heard, kitchen.settings.unit);
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

const PAST_SHOWN = 5;

async function pastTests(
  parts: Hearing,
  understood: readonly Understood[],
  scene: Scene,
): Promise<readonly PastTest[]> {
  const asked = understood.flatMap((one) =>
    'entry' in one && one.entry.kind === 'askHistory' ? [itemFor(scene, one.entry.item)] : [],
  );
  const items = new Set(asked.filter((item) => item !== undefined));
  const rows = await Promise.all(
    [...items].map((item) => parts.store.closedTests(parts.id, item, PAST_SHOWN)),
  );
  return rows.flat();
}

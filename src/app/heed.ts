// What one message comes to in the kitchen as it is. Nothing is stored here.
import type { Kitchen } from '../core/kitchen.ts';
import { seesCosts } from '../core/role.ts';
import type { Question } from '../core/question.ts';
import type { UsualWeights } from '../core/plausible.ts';
import type { DuesOf } from '../core/schedule.ts';
import type { Bands } from '../core/slip.ts';
import type { Scene } from '../intents/intent.ts';
import type { Listener } from '../language/listen.ts';
import { type Heard, parse } from '../language/parse.ts';
import { atHand } from './at-hand.ts';
import { converse, type Heeded } from './converse.ts';
import { heedEdit } from './edit.ts';
import { withPast } from './past.ts';
import { readingOr } from './reading-heard.ts';
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
  /** The name of the engine that hears voice notes here. */
  readonly hears?: string;
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
      ...(parts.hears === undefined ? {} : { hears: parts.hears }),
      ...(parts.duesOf === undefined ? {} : { duesOf: parts.duesOf }),
      seesCosts: seesCosts(readBy, kitchen.settings),
    },
    message,
  );
  const informed = await withPast(parts, { scene, question, understood });
  const heard = message.heard && { words: message.text, ...message.heard };
  const conversation = { scene: informed, question, message: id, heard };
  if (message.replaces !== undefined)
    return heedEdit({ ...conversation, replaces: message.replaces }, understood);
  return converse(conversation, understood);
}

function hear(parts: Hearing, { kitchen, questions }: State, message: Message): readonly Understood[] {
  if (message.pressed !== undefined) return [{ entry: message.pressed }];
  const listener = parts.listenerFor(kitchen);
  const { unit, timezone: zone } = kitchen.settings;
  const answering = questions.has(message.speaker);
  const plain = parse(listener, message.text, { answering });
  const { duesOf } = parts;
  const asked = {
    kitchen,
    at: message.at,
    speaker: message.speaker,
    answering,
    ...(duesOf === undefined ? {} : { duesOf }),
  };
  const heard = isUnclear(plain) ? readingOr(plain, listener, message.text, asked) : plain;
  const wants = questions.get(message.speaker)?.wants;
  return understand(heard, {
    ...{ unit, clock: { at: message.at, zone }, language: listener.language },
    ...(wants === undefined ? {} : { wants }),
  });
}

/** Nothing that anybody could have meant at any time, or a question at the most. */
const isUnclear = ({ said, unread, tooLong }: Heard): boolean =>
  said.every(({ doubt }) => doubt !== undefined) && unread === undefined && tooLong !== true;

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

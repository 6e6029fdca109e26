// One message, start to end: heard outside the queue, then one at a time per kitchen read, decided and appended in one
// transaction, then put into words. The kitchen in memory changes only when the store has it.
import type { Kitchen, Settings } from '../core/kitchen.ts';
import { seesCosts } from '../core/role.ts';
import type { Question } from '../core/question.ts';
import type { PastTest, Scene } from '../intents/intent.ts';
import { itemFor } from '../intents/route.ts';
import type { UsualWeights } from '../core/plausible.ts';
import type { Listener } from '../language/listen.ts';
import { parse } from '../language/parse.ts';
import type { Render } from '../language/render.ts';
import { converse, type Heeded } from './converse.ts';
import { isSure, withHeard } from './heard.ts';
import type { Delivery, Mailbox } from './ports/mailbox.ts';
import type { KitchenId, Store } from './ports/store.ts';
import type { Answer, Message, Table } from './ports/table.ts';
import { restore, withRecentTests, withSpeaker } from './restore.ts';
import { understand, type Understood } from './understand.ts';
import { changedViews } from './views.ts';

export interface TableParts {
  /** With `settle` for a channel that posts its answers. */
  readonly store: Store & Partial<Pick<Mailbox, 'settle'>>;
  readonly id: KitchenId;
  readonly usual: UsualWeights;
  readonly render: Render;
  /** The language with the kitchen's own names in it. */
  readonly listenerFor: (kitchen: Kitchen) => Listener;
}

interface State {
  kitchen: Kitchen;
  readonly questions: Map<string, Question>;
}

/** Opens a kitchen that the store has. */
export async function openTable(parts: TableParts): Promise<Table> {
  const stored = await parts.store.load(parts.id);
  if (stored === undefined) throw new Error(`there is no kitchen ${parts.id}`);
  const state: State = { kitchen: restore(stored), questions: new Map(stored.questions) };
  let queue: Promise<unknown> = Promise.resolve();
  const inTurn = <Result>(work: () => Promise<Result>): Promise<Result> => {
    const result = queue.then(work);
    queue = result.catch(() => undefined);
    return result;
  };
  return {
    take: (message) => inTurn(() => takeTurn(parts, state, message)),
    weighUp: (message) => inTurn(async () => worded(parts, message, await heed(parts, state, message))),
    kitchen: () => state.kitchen,
    questionFor: (speaker) => state.questions.get(speaker),
  };
}

async function takeTurn(parts: TableParts, state: State, message: Message): Promise<Answer> {
  const { store, id } = parts;
  const known = await answeredBefore(parts, message);
  if (known !== undefined) return known;
  const before = state.kitchen;
  const question = state.questions.get(message.speaker);
  const heeded = await heed(parts, state, message);
  const answer = worded(parts, message, heeded);
  const asksOther = heeded.question !== question;
  const delivery = message.deliver?.(answer);
  if (heeded.facts.length > 0 || asksOther) {
    const { id: key, speaker, at, text } = message;
    const { outcome, reply } = answer;
    const views = changedViews(before, heeded.kitchen);
    const change = asksOther ? { question: heeded.question ?? null } : {};
    const stored = await store.append({
      kitchen: id,
      message: key,
      speaker,
      at,
      text,
      outcome,
      reply,
      facts: heeded.facts,
      views,
      ...change,
      ...(delivery === undefined ? {} : { delivery }),
    });
    if (stored === 'seen')
      return { ...answer, reply: (await store.replyTo(id, key)) ?? '', outcome: 'answered', entries: [] };
  } else await settle(store, delivery);
  state.kitchen = heeded.kitchen;
  if (heeded.question === undefined) state.questions.delete(message.speaker);
  else state.questions.set(message.speaker, heeded.question);
  return answer;
}

/** A posted message that comes again was answered: by now it may come to something else, or to nothing worth storing. */
async function answeredBefore({ store, id }: TableParts, message: Message): Promise<Answer | undefined> {
  const reply = message.deliver && (await store.replyTo(id, message.id));
  if (reply === undefined) return undefined;
  const answer: Answer = { reply, outcome: 'answered', entries: [], ask: null };
  await settle(store, message.deliver && { ...message.deliver(answer), letters: [] });
  return answer;
}

async function settle({ settle }: TableParts['store'], delivery: Delivery | undefined): Promise<void> {
  if (delivery === undefined) return;
  if (settle === undefined) throw new Error('nothing to post answers with');
  await settle(delivery);
}

/** What the message comes to in the kitchen as it is. */
async function heed(parts: TableParts, state: State, message: Message): Promise<Heeded> {
  const { speaker, at, role, text, id } = message;
  const question = state.questions.get(speaker);
  const understood = understand(
    parse(parts.listenerFor(state.kitchen), text, { answering: question !== undefined }),
    state.kitchen.settings.unit,
  );
  const kitchen = await atHand(parts, state, { speaker, understood });
  const { settings } = kitchen;
  const scene: Scene = {
    ...{ kitchen, speaker, at, role, usual: parts.usual, past: [] },
    seesCosts: readsCosts(message, settings),
  };
  const past = await pastTests(parts, understood, scene);
  const heard = message.heard && { words: text, isSure: isSure(message.heard) };
  return converse({ scene: { ...scene, past }, question, message: id, heard }, understood);
}

/** Reads what the speaker did before, at their first message, and what a correction or an undo may touch. */
async function atHand(
  parts: TableParts,
  state: State,
  at: { speaker: string; understood: readonly Understood[] },
): Promise<Kitchen> {
  if (at.understood.length === 0) return state.kitchen;
  const { kitchen } = state;
  if (!kitchen.speakers.has(at.speaker)) {
    state.kitchen = await withSpeaker(parts.store, parts.id, { kitchen, speaker: at.speaker });
    return state.kitchen;
  }
  const looksBack = at.understood.some(
    (one) => 'entry' in one && (one.entry.kind === 'undo' || one.entry.kind === 'correct'),
  );
  if (looksBack)
    state.kitchen = await withRecentTests(parts.store, parts.id, { kitchen, speaker: at.speaker });
  return state.kitchen;
}

const PAST_SHOWN = 5;

async function pastTests(
  parts: TableParts,
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

const readsCosts = ({ role, readBy = role }: Message, settings: Settings): boolean =>
  seesCosts(readBy, settings);

function worded(parts: TableParts, message: Message, heeded: Heeded): Answer {
  const { settings } = heeded.kitchen;
  const { unit, currency, timezone } = settings;
  const reader = { unit, currency, timezone, seesCosts: readsCosts(message, settings) };
  const { outcome, entries, asked } = heeded;
  const { text } = message;
  return {
    reply: parts.render(message.heard === undefined ? heeded.say : withHeard(text, heeded), reader),
    outcome,
    entries,
    ask: asked === undefined ? null : parts.render([asked], reader),
  };
}

// One message, start to end: heard outside the queue, then one at a time per kitchen read, decided and appended in one
// transaction, then put into words. The kitchen in memory changes only when the store has it.
import type { TestId } from '../core/facts.ts';
import { toPlainJson } from '../core/plain-json.ts';
import { name, type Reply, say } from '../core/reply.ts';
import { type Role, seesCosts } from '../core/role.ts';
import { cardLines } from '../intents/card.ts';
import type { Render } from '../language/render.ts';
import type { Heeded } from './converse.ts';
import { withHeard } from './heard.ts';
import { heed, type Hearing, type State } from './heed.ts';
import type { Delivery, Mailbox } from './ports/mailbox.ts';
import type { Store } from './ports/store.ts';
import type { Answer, Message, Table, Touched } from './ports/table.ts';
import { restore } from './restore.ts';
import { changedViews } from './views.ts';

export interface TableParts extends Hearing {
  /** With `settle` for a channel that posts its answers. */
  readonly store: Store & Partial<Pick<Mailbox, 'settle'>>;
  readonly render: Render;
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
    weighUp: (message) =>
      inTurn(async () => {
        const heeded = await heed(parts, state, message);
        const asksOther = heeded.question !== state.questions.get(message.speaker);
        return worded({ render: parts.render, message, heeded, asksOther });
      }),
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
  const asksOther = heeded.question !== question;
  const answer = worded({ render: parts.render, message, heeded, asksOther });
  const delivery = await message.deliver?.(answer);
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
    if (stored === 'seen') return seenBefore((await store.replyTo(id, key)) ?? '');
  } else await settle(store, delivery);
  if (heeded.facts.length > 0) state.kitchen = heeded.kitchen;
  if (heeded.question === undefined) state.questions.delete(message.speaker);
  else state.questions.set(message.speaker, heeded.question);
  return answer;
}

/** A posted message that comes again was answered: by now it may come to something else, or to nothing worth storing. */
async function answeredBefore({ store, id }: TableParts, message: Message): Promise<Answer | undefined> {
  const reply = message.deliver && (await store.replyTo(id, message.id));
  if (reply === undefined) return undefined;
  const answer = seenBefore(reply);
  const delivery = await message.deliver?.(answer);
  await settle(store, delivery && withoutLetters(delivery));
  return answer;
}

function withoutLetters({ buttons: _, ...delivery }: Delivery): Delivery {
  return { ...delivery, letters: [] };
}

const seenBefore = (reply: string): Answer => ({
  ...{ reply, outcome: 'answered', entries: [], ask: null, touched: [], asksOther: false, choices: [] },
  replyFor: () => reply,
  cardFor: () => '',
});

async function settle({ settle }: TableParts['store'], delivery: Delivery | undefined): Promise<void> {
  if (delivery === undefined) return;
  if (settle === undefined) throw new Error('nothing to post answers with');
  await settle(delivery);
}

interface Wording {
  readonly render: Render;
  readonly message: Message;
  readonly heeded: Heeded;
  readonly asksOther: boolean;
}

function worded({ render, message, heeded, asksOther }: Wording): Answer {
  const { kitchen, outcome, entries, asked, question } = heeded;
  const { unit, currency, timezone } = kitchen.settings;
  const wordsFor = (replies: readonly Reply[], reader: Role): string =>
    render(replies, { unit, currency, timezone, seesCosts: seesCosts(reader, kitchen.settings) });
  const { readBy = message.role, heard, text } = message;
  const said = heard === undefined ? heeded.say : withHeard(text, heeded);
  return {
    reply: wordsFor(said, readBy),
    outcome,
    entries,
    ask: asked === undefined ? null : wordsFor([asked], readBy),
    touched: touchedBy(heeded, message.speaker),
    asksOther,
    choices: asked === undefined ? [] : choicesOf(question),
    replyFor: (reader) => wordsFor(said, reader),
    cardFor: (test, reader) => wordsFor(cardOf(heeded, message, test), reader),
  };
}

/** Each of different meaning: "replace" and "yes" may come to the same. */
function choicesOf(question: Heeded['question']): readonly string[] {
  const meanings = new Map<string, string>();
  for (const [word, entry] of Object.entries(question?.choices ?? {})) {
    const meaning = toPlainJson(entry);
    if (!meanings.has(meaning)) meanings.set(meaning, word);
  }
  return [...meanings.values()];
}

function cardOf({ kitchen }: Heeded, { speaker, at, role }: Message, id: TestId): readonly Reply[] {
  const test = kitchen.tests.get(id);
  if (test === undefined) return [];
  const lines = cardLines({ kitchen, speaker, at, role, usual: new Map(), past: [], seesCosts: true }, test);
  return test.status === 'closed' ? [say('closed', { item: name(test.item) }), ...lines] : lines;
}

function touchedBy({ facts, kitchen }: Heeded, speaker: string): readonly Touched[] {
  const ids = new Set(facts.flatMap(({ test }) => (test === undefined ? [] : [test])));
  const recent = kitchen.speakers.get(speaker)?.recent ?? [];
  return [...ids].flatMap((id) => {
    const status = kitchen.tests.get(id)?.status;
    const undoable = recent.findLast((each) => each.facts.some(({ test }) => test === id))?.entry;
    return status === undefined ? [] : [{ id, status, ...(undoable === undefined ? {} : { undoable }) }];
  });
}

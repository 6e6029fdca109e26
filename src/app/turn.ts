// One message, start to end: heard outside the queue, then one at a time per kitchen read, decided and appended in one
// transaction, then put into words. The kitchen in memory changes only when the store has it.
import type { Render } from '../language/render.ts';
import { type Agenda, newAgenda, tellFirst } from './fall-due.ts';
import { heed, type Hearing, type State } from './heed.ts';
import type { Delivery, Mailbox } from './ports/mailbox.ts';
import type { PaperMaker } from './ports/paper.ts';
import type { Store } from './ports/store.ts';
import type { Answer, Message, Table, Telling, Told } from './ports/table.ts';
import { restore } from './restore.ts';
import { changedViews } from './views.ts';
import { seenBefore, worded } from './worded.ts';

export interface TableParts extends Hearing {
  /** With `settle` for a channel that posts its answers. */
  readonly store: Store & Partial<Pick<Mailbox, 'settle'>>;
  readonly render: Render;
  /** Makes the files that go with answers; without it there are none. */
  readonly papers?: PaperMaker;
}

/** Opens a kitchen that the store has. */
export async function openTable(parts: TableParts): Promise<Table> {
  const stored = await parts.store.load(parts.id);
  if (stored === undefined) throw new Error(`there is no kitchen ${parts.id}`);
  const agenda = newAgenda(parts.duesOf);
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
        return worded({ parts, message, heeded, question: state.questions.get(message.speaker) });
      }),
    kitchen: () => state.kitchen,
    tellDue: async (telling) => {
      const now = Date.parse(telling.at);
      const isDue = (): boolean => agenda.waiting(state.kitchen, now).some(({ at }) => at <= now);
      return isDue() ? await inTurn(() => tellAll(parts, state, { agenda, telling })) : [];
    },
    nextDue: (at) => {
      const [first] = agenda.waiting(state.kitchen, Date.parse(at));
      return first && new Date(first.at).toISOString();
    },
    questionFor: (speaker) => state.questions.get(speaker),
  };
}

/** One after the other, each in the kitchen that the one before has left. */
async function tellAll(
  parts: TableParts,
  state: State,
  { agenda, telling }: { agenda: Agenda; telling: Telling },
): Promise<readonly Told[]> {
  const all: Told[] = [];
  for (;;) {
    const done = await tellFirst(parts, agenda, { kitchen: state.kitchen, telling });
    if (done === undefined) return all;
    state.kitchen = done.kitchen;
    if (done.told !== undefined) all.push(done.told);
  }
}

async function takeTurn(parts: TableParts, state: State, message: Message): Promise<Answer> {
  const { store, id } = parts;
  const known = await answeredBefore(parts, message);
  if (known !== undefined) return known;
  const before = state.kitchen;
  const question = state.questions.get(message.speaker);
  const heeded = await heed(parts, state, message);
  const asksOther = heeded.question !== question;
  const answer = worded({ parts, message, heeded, question });
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

async function settle({ settle }: TableParts['store'], delivery: Delivery | undefined): Promise<void> {
  if (delivery === undefined) return;
  if (settle === undefined) throw new Error('nothing to post answers with');
  await settle(delivery);
}

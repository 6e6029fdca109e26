// What a message came to, in words: for the speaker, and for whoever else reads it.
import type { TestId } from '../core/facts.ts';
import { toPlainJson } from '../core/plain-json.ts';
import type { Question } from '../core/question.ts';
import { name, type Reply, say } from '../core/reply.ts';
import { type Role, seesCosts } from '../core/role.ts';
import { cardLines } from '../intents/card.ts';
import type { Reader, Render } from '../language/render.ts';
import { forTheEar, isHeardOut } from './aloud.ts';
import type { Heeded } from './converse.ts';
import { withHeard } from './heard.ts';
import { fileOf } from './paper.ts';
import type { PaperMaker } from './ports/paper.ts';
import type { Answer, Message, Touched } from './ports/table.ts';

interface Wording {
  readonly parts: { readonly render: Render; readonly papers?: PaperMaker };
  readonly message: Message;
  readonly heeded: Heeded;
  /** The question that stood before. */
  readonly question: Question | undefined;
}

export function worded({ parts: { render, papers }, message, heeded, question: before }: Wording): Answer {
  const { kitchen, outcome, entries, asked, question } = heeded;
  const asksOther = question !== before;
  const { unit, currency, timezone } = kitchen.settings;
  const readerAs = (role: Role): Reader => ({
    ...{ unit, currency, timezone },
    seesCosts: seesCosts(role, kitchen.settings),
  });
  const wordsFor = (replies: readonly Reply[], reader: Role): string => render(replies, readerAs(reader));
  const { readBy = message.role, heard, text } = message;
  const said = heard === undefined ? heeded.say : withHeard(text, heeded);
  const reply = wordsFor(said, readBy);
  const undoable = undoableIn(heeded, message.speaker);
  const files =
    papers &&
    heeded.papers.map((paper) => fileOf(papers, paper, { render, reader: readerAs(readBy) }, reply));
  return {
    reply,
    ...(files === undefined || files.length === 0 ? {} : { files }),
    ...(isHeardOut(message, heeded, before)
      ? { aloud: aloudOf(heeded, (replies) => wordsFor(replies, readBy)) }
      : {}),
    ...(undoable === undefined ? {} : { undoable }),
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

/** Without what only the eye asks for. */
const aloudOf = ({ say: replies }: Heeded, words: (replies: readonly Reply[]) => string): string =>
  forTheEar(words(replies.filter(({ id }) => id !== 'heard-by')), words([say('rest-written')]));

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

function undoableIn({ facts, kitchen }: Heeded, speaker: string): string | undefined {
  const last = kitchen.speakers.get(speaker)?.recent.at(-1)?.entry;
  return facts.some(({ entry }) => entry === last) ? last : undefined;
}

/** A message that comes again was answered. */
export const seenBefore = (reply: string): Answer => ({
  ...{ reply, outcome: 'answered', entries: [], ask: null, touched: [], asksOther: false, choices: [] },
  replyFor: () => reply,
  cardFor: () => '',
});

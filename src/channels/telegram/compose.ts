// What is posted with an answer: the cards of the tests that changed, in each chat that has one; a sign under the entry; a
// question with its buttons; what was asked for or is worth a message of its own.
import type { Meaning } from '../../app/ports/cards.ts';
import type { Delivery, NewLetter } from '../../app/ports/mailbox.ts';
import type { Answer, Touched } from '../../app/ports/table.ts';
import type { Membership } from '../../app/ports/team.ts';
import { name, say } from '../../core/reply.ts';
import type { Role } from '../../core/role.ts';
import { traceOf } from './calls.ts';
import { type Desk, done, letters } from './desk.ts';
import type { Personal } from './incoming.ts';
import { cardKeyboard, questionKeyboard } from './keyboard.ts';
import { split } from './split.ts';

export interface Answered {
  readonly desk: Desk;
  readonly update: number;
  readonly incoming: Personal & { is: 'text' | 'edited' | 'press' | 'voice' };
  readonly member: Membership;
  readonly answer: Answer;
  /** Of the button that was pressed. */
  readonly scope?: string;
}

/** In a group whoever is there reads it: nothing is told there that not everybody may see. */
export const readersOf = ({ isGroup }: Personal, { role }: Membership): Role => (isGroup ? 'cutter' : role);

/** One of the few signs that the service has for it. */
const NOTED = '✍';

interface Posted {
  readonly letters: readonly NewLetter[];
  readonly meanings: readonly Meaning[];
  readonly void: readonly { readonly chat: number; readonly scope: string }[];
}

const NOTHING: Posted = { letters: [], meanings: [], void: [] };

export async function compose(answered: Answered): Promise<Delivery> {
  const { desk, update } = answered;
  const parts = [
    acknowledgement(answered),
    question(answered),
    message(answered),
    await files(answered),
    ...(await cards(answered)),
  ];
  const change = {
    void: [...spent(answered), ...parts.flatMap((part) => part.void)],
    add: parts.flatMap(({ meanings }) => meanings),
  };
  return done(
    desk,
    update,
    parts.flatMap((part) => part.letters),
    { buttons: change },
  );
}

const questionScope = (person: number): string => `question:${person}`;

/** A press uses up all buttons beside it; another question, or none, those of the one before. */
function spent({ incoming: { chat, person }, answer, scope }: Answered): Posted['void'] {
  return [
    ...(scope === undefined ? [] : [{ chat, scope }]),
    ...(answer.asksOther ? [{ chat, scope: questionScope(person) }] : []),
  ];
}

/** The card says all of it: what was recorded needs no message beside. */
function isQuiet({ answer: { outcome, touched, entries } }: Answered): boolean {
  const isOver = touched.length === 0 || touched.some(({ status }) => status === 'closed');
  return outcome === 'recorded' && !isOver && entries.every((entry) => !isQuestion(entry));
}

function isQuestion(entry: unknown): boolean {
  const kind = typeof entry === 'object' && entry !== null && 'kind' in entry ? String(entry.kind) : '';
  return kind.startsWith('ask') || kind === 'status' || kind === 'help';
}

const LONGEST_TOAST = 190;

function acknowledgement(answered: Answered): Posted {
  const { incoming, answer, scope, desk } = answered;
  const { chat } = incoming;
  if (incoming.is === 'press') {
    const { press } = incoming;
    const text =
      answer.outcome === 'ignored' ? desk.words(say('press-stale')) : isQuiet(answered) ? answer.reply : '';
    const toast = {
      chat,
      kind: 'toast',
      press,
      text: Array.from(text).slice(0, LONGEST_TOAST).join(''),
    } as const;
    const isOfQuestion = scope?.startsWith('question:') === true && incoming.message !== undefined;
    const bare = isOfQuestion ? [{ chat, kind: 'bare', text: '', about: incoming.message } as const] : [];
    return { ...NOTHING, letters: [toast, ...bare] };
  }
  // What was heard is always shown: the card says it, and the sign stands under the note.
  if (!isQuiet(answered)) return NOTHING;
  return { ...NOTHING, letters: [{ chat, kind: 'reaction', text: NOTED, about: incoming.message }] };
}

function question({ desk, incoming, member, answer }: Answered): Posted {
  if (answer.outcome !== 'asked') return NOTHING;
  const { chat, person } = incoming;
  const where = { chat, kitchen: member.kitchen, scope: questionScope(person) };
  const { rows, meanings } = questionKeyboard(desk, where, { choices: answer.choices, person });
  const buttons = rows.length === 0 ? {} : { buttons: rows };
  return { ...NOTHING, letters: letters(chat, answer.reply, { ...about(incoming), ...buttons }), meanings };
}

/** In a group it is seen to whom it answers. */
const about = ({ isGroup, message, is }: Answered['incoming']): { about?: number } =>
  isGroup && message !== undefined && is !== 'press' ? { about: message } : {};

function message(answered: Answered): Posted {
  const { desk, incoming, answer } = answered;
  if (answer.outcome === 'asked' || isQuiet(answered)) return NOTHING;
  // The press that came too late is answered by its toast.
  if (answer.outcome === 'ignored' && (incoming.is === 'press' || !incoming.isAddressed)) return NOTHING;
  const text = answer.outcome === 'ignored' ? desk.words(say('not-for-me')) : answer.reply;
  const told = text === '' ? desk.words(say('telegram-noted')) : text;
  return { ...NOTHING, letters: letters(incoming.chat, told, about(incoming)) };
}

/** A file that can't be made is no loss: the answer stands in words. */
async function files({ desk, incoming: { chat }, answer }: Answered): Promise<Posted> {
  const made = await Promise.all(
    (answer.files ?? []).map(async ({ name: file, type, caption, bytes }): Promise<readonly NewLetter[]> => {
      try {
        return [{ chat, kind: 'file', text: caption, file: { name: file, type, bytes: await bytes() } }];
      } catch (error) {
        desk.log.error(traceOf(error), 'file not made');
        return letters(chat, desk.words(say('file-failed', { what: name(file) })));
      }
    }),
  );
  return { ...NOTHING, letters: made.flat() };
}

/** Where the test is shown, and who reads it there. */
interface Shown {
  readonly chat: number;
  readonly reader: Role;
  readonly test: Touched;
}

async function cards(answered: Answered): Promise<readonly Posted[]> {
  const posted: Posted[] = [];
  for (const test of answered.answer.touched)
    for (const { chat, reader } of await chatsOf(answered, test))
      posted.push(card(answered, { chat, reader, test }));
  return posted;
}

/** Chats are kept below zero for groups, and have the number of the person else. */
async function chatsOf(
  { desk, incoming, member }: Answered,
  test: Touched,
): Promise<readonly Omit<Shown, 'test'>[]> {
  const { kitchen } = member;
  const known = await desk.post.chatsWithCard(desk.bot, { kitchen, test: test.id });
  const here = test.status === 'open' ? [incoming.chat] : [];
  const members = await desk.post.members(kitchen);
  return [...new Set([...known, ...here])].flatMap((chat) => {
    const reader = chat < 0 ? 'cutter' : members.find(({ person }) => person === chat)?.role;
    return reader === undefined ? [] : [{ chat, reader }];
  });
}

function card(answered: Answered, { chat, reader, test }: Shown): Posted {
  const { desk, member } = answered;
  const { kitchen, person } = member;
  const scope = `card:${test.id}`;
  const isOpen = test.status === 'open';
  const where = { chat, kitchen, scope };
  const { rows, meanings } = isOpen
    ? cardKeyboard(desk, where, { test, person })
    : { rows: [], meanings: [] };
  const letter: NewLetter = {
    ...{ chat, kind: 'card', text: cardText(answered, { chat, reader, test }) },
    ...{ buttons: rows, card: { kitchen, test: test.id, isOpen } },
  };
  return { letters: [letter], meanings, void: [{ chat, scope }] };
}

/** The test at a glance, and below it what was recorded last: read back where it was said, with the name of who said it elsewhere. */
function cardText(answered: Answered, { chat, reader, test }: Shown): string {
  const { desk, incoming, member, answer } = answered;
  const glance = answer.cardFor(test.id, reader);
  const last = isQuiet(answered) ? answer.replyFor(reader) : '';
  const said =
    chat === incoming.chat && !incoming.isGroup
      ? last
      : `${desk.words(say('said-by', { name: name(member.name) }))} ${last}`;
  const [whole, ...rest] = split(last === '' ? glance : glance === '' ? said : `${glance}\n\n${said}`);
  return rest.length === 0 ? (whole ?? desk.words(say('telegram-noted'))) : said;
}

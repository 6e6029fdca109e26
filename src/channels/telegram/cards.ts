// The card of each test that changed, in every chat that has one.
import type { NewLetter } from '../../app/ports/mailbox.ts';
import type { Touched } from '../../app/ports/table.ts';
import { name, say } from '../../core/reply.ts';
import type { Role } from '../../core/role.ts';
import { type Answered, isQuiet, type Posted } from './answered.ts';
import { cardKeyboard } from './keyboard.ts';
import { split } from './split.ts';

/** Where the test is shown, and who reads it there. */
interface Shown {
  readonly chat: number;
  readonly reader: Role;
  readonly test: Touched;
}

export async function cards(answered: Answered): Promise<readonly Posted[]> {
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

// One update from start to end. It ends in one transaction: with the facts of its turn, or by itself.
import type { Update } from 'grammy/types';
import type { StoredUpdate } from '../../app/ports/mailbox.ts';
import type { Membership } from '../../app/ports/team.ts';
import { say } from '../../core/reply.ts';
import { type Desk, done, letters, now } from './desk.ts';
import { joinGroup, leaveGroup } from './groups.ts';
import { type Incoming, type Personal, readUpdate } from './incoming.ts';
import { handlePress } from './press.ts';
import { fulfil } from './team.ts';
import { answerStart, greetStranger, nameMember } from './strangers.ts';
import { takeNote } from './notes.ts';
import { takeTurn } from './turns.ts';

/** More than anybody says in one breath; what is longer is not cut but refused. */
const LONGEST_TEXT = 1000;

const readBody = (desk: Desk, body: string): Incoming =>
  readUpdate(JSON.parse(body) as Update, desk.username());

export async function handle(desk: Desk, { id, body }: StoredUpdate): Promise<void> {
  const incoming = readBody(desk, body);
  switch (incoming.is) {
    case 'nothing':
      return desk.post.settle(done(desk, id, []));
    case 'came':
      return joinGroup(desk, id, incoming);
    case 'gone':
      return desk.post.settle(done(desk, id, [], { change: { is: 'groupLeft', chat: incoming.chat } }));
    case 'moved': {
      const { from, to } = incoming;
      return desk.post.settle(done(desk, id, [], { change: { is: 'groupMoved', from, to } }));
    }
    case 'text':
    case 'edited':
    case 'press':
    case 'voice':
    case 'secondhand':
    case 'unread':
      return handlePersonal(desk, id, incoming);
  }
}

async function handlePersonal(desk: Desk, update: number, incoming: Personal): Promise<void> {
  const member = await desk.post.memberOf(incoming.person);
  const { isGroup, chat } = incoming;
  const kitchen = isGroup ? await desk.post.groupOf(desk.bot, chat) : member?.kitchen;
  if (isGroup && kitchen === undefined) return leaveGroup(desk, update, chat);
  if (member === undefined || member.kitchen !== kitchen) return greetStranger(desk, update, incoming);
  const budget = incoming.is === 'press' ? desk.presses : desk.members;
  switch (budget.take(incoming.person, Date.parse(incoming.at))) {
    case 'spent':
      return answer(desk, update, incoming, 'telegram-too-fast');
    case 'out':
      return desk.post.settle(done(desk, update, []));
    case 'allowed':
      return handleMember(desk, update, { incoming, member: await nameMember(desk, member, incoming.name) });
  }
}

interface Heard {
  readonly incoming: Personal;
  readonly member: Membership;
}

const NO_ENTRY = {
  secondhand: 'telegram-secondhand',
  unread: 'telegram-unread',
} as const;

async function handleMember(desk: Desk, update: number, { incoming, member }: Heard): Promise<void> {
  switch (incoming.is) {
    case 'voice':
      return takeNote(desk, update, { incoming, member });
    case 'secondhand':
    case 'unread':
      return incoming.isAddressed
        ? answer(desk, update, incoming, NO_ENTRY[incoming.is])
        : desk.post.settle(done(desk, update, []));
    case 'press':
      return handlePress(desk, update, { incoming, member });
    case 'edited':
      return incoming.text.length > LONGEST_TEXT
        ? answer(desk, update, incoming, 'telegram-too-long')
        : takeTurn(desk, update, { incoming, member });
    case 'text':
      return handleText(desk, update, { incoming, member });
  }
}

async function handleText(
  desk: Desk,
  update: number,
  { incoming, member }: { incoming: Personal & { is: 'text' }; member: Membership },
): Promise<void> {
  const { text, isAddressed } = incoming;
  if (text.length > LONGEST_TEXT) {
    if (isAddressed) return answer(desk, update, incoming, 'telegram-too-long');
    return desk.post.settle(done(desk, update, []));
  }
  if (/^\/start\b/.test(text)) return answerStart(desk, update, { incoming, member });
  const line = text.replace(/^\//, '');
  const settled = await fulfil(desk, update, { ...incoming, member, line });
  if (!settled) await takeTurn(desk, update, { incoming: { ...incoming, text: line }, member });
}

const answer = (desk: Desk, update: number, { chat }: Personal, id: string): Promise<void> =>
  desk.post.settle(done(desk, update, letters(chat, desk.words(say(id)))));

/** What cannot be handled is put aside, and the person told. */
export async function park(desk: Desk, update: StoredUpdate): Promise<void> {
  desk.log.error({ update: update.id, failures: update.failures }, 'update parked');
  const chat = await chatOfMember(desk, update);
  const told = chat === undefined ? [] : letters(chat, desk.words(say('telegram-parked')));
  await desk.post.settle({ ...done(desk, update.id, told), end: 'parked', at: now() });
}

/** Where the member said it, as far as it can be read. */
async function chatOfMember(desk: Desk, { body }: StoredUpdate): Promise<number | undefined> {
  try {
    const incoming = readBody(desk, body);
    if (!('person' in incoming)) return undefined;
    const member = await desk.post.memberOf(incoming.person);
    const group = incoming.isGroup ? await desk.post.groupOf(desk.bot, incoming.chat) : member?.kitchen;
    return member !== undefined && group === member.kitchen ? incoming.chat : undefined;
  } catch {
    return undefined;
  }
}

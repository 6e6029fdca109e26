// What a member says, taken to the table of their kitchen.
import type { Table } from '../../app/ports/table.ts';
import type { Membership } from '../../app/ports/team.ts';
import type { Entry } from '../../core/entry.ts';
import type { TestId } from '../../core/facts.ts';
import { readersOf } from './answered.ts';
import { compose } from './compose.ts';
import type { Desk } from './desk.ts';
import type { Personal } from './incoming.ts';

export const speakerOf = (person: number): string => `telegram:${person}`;

export function tableOf({ tables }: Desk, { kitchen }: Membership): Table {
  const table = tables.get(kitchen);
  if (table === undefined) throw new Error('a kitchen that is not open');
  return table;
}

interface Spoken {
  readonly incoming: Personal & { is: 'text' | 'edited' };
  readonly member: Membership;
}

export async function takeTurn(desk: Desk, update: number, { incoming, member }: Spoken): Promise<void> {
  const { chat, message, person, at, text } = incoming;
  const about = await testOf(desk, incoming, member);
  const said = `${chat}:${message}`;
  const isEdit = incoming.is === 'edited';
  await tableOf(desk, member).take({
    id: isEdit ? `${said}@${update}` : said,
    ...{ speaker: speakerOf(person), at, text, role: member.role, readBy: readersOf(incoming, member) },
    people: await peopleOf(desk, member),
    ...(isEdit ? { replaces: said } : {}),
    ...(about === undefined ? {} : { about }),
    deliver: (answer) => compose({ desk, update, incoming, member, answer }),
  });
}

interface Pressed {
  readonly incoming: Personal & { is: 'press' };
  readonly member: Membership;
  readonly entry: Entry;
  readonly label: string;
  readonly scope: string;
}

export async function takePress(desk: Desk, update: number, pressed: Pressed): Promise<void> {
  const { incoming, member, entry, label, scope } = pressed;
  const { person, at, data } = incoming;
  await tableOf(desk, member).take({
    id: `press:${data}`,
    ...{
      speaker: speakerOf(person),
      at,
      text: label,
      role: member.role,
      readBy: readersOf(incoming, member),
    },
    people: await peopleOf(desk, member),
    pressed: entry,
    deliver: (answer) => compose({ desk, update, incoming, member, answer, scope }),
  });
}

/** What the members are called by those who read. */
export async function peopleOf(
  { post }: Desk,
  { kitchen }: Membership,
): Promise<ReadonlyMap<string, string>> {
  const members = await post.members(kitchen);
  return new Map(members.map(({ person, name }) => [speakerOf(person), name]));
}

/** An answer to a card is about its test. */
export async function testOf(
  desk: Desk,
  incoming: Personal & { is: 'text' | 'edited' | 'voice' },
  member: Membership,
): Promise<TestId | undefined> {
  if (incoming.is === 'edited' || incoming.answers === undefined) return undefined;
  const card = await desk.post.cardAt(desk.bot, incoming.chat, incoming.answers);
  return card?.kitchen === member.kitchen ? card.test : undefined;
}

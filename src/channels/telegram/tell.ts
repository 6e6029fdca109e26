// What falls due, as letters: each reader is told what they may see.
import type { Posted } from '../../app/ports/store.ts';
import type { Told } from '../../app/ports/table.ts';
import type { Member } from '../../app/ports/team.ts';
import { letters } from './desk.ts';

export interface Reader {
  readonly chat: number;
  readonly role: Member['role'];
}

/** Whom it goes to. There are no groups yet: the team is its owners and leads, each in their own chat; so is somebody who has left. */
export function chatsOf(to: Told['to'], members: readonly Member[]): readonly Reader[] {
  const named = to === 'team' ? [] : members.filter((member) => isNamed(member, to.speaker));
  const readers = named.length > 0 ? named : members.filter(({ role }) => role !== 'cutter');
  return readers.map(({ person, role }) => ({ chat: person, role }));
}

const isNamed = ({ person, name }: Member, speaker: string): boolean =>
  speaker === `telegram:${person}` || speaker.toLowerCase() === name.toLowerCase();

export const postedTo = (bot: string, told: Told, readers: readonly Reader[]): Posted => ({
  bot,
  letters: readers.flatMap(({ chat, role }) => letters(chat, told.words(role))),
});

// Whose chats hear what falls due, from who is in the kitchen alone.
import { describe, expect, it } from 'vitest';
import { chatsOf } from '../../src/channels/telegram/tell.ts';
import type { Member } from '../../src/app/ports/team.ts';

const member = (person: number, name: string, role: Member['role']): Member => ({ person, name, role });
const OWNER = member(1, 'Ana', 'owner');
const LEAD = member(2, 'Marit', 'lead');
const CUTTER = member(3, 'Ines', 'cutter');
const members = [OWNER, LEAD, CUTTER];
const chats = (...from: Parameters<typeof chatsOf>): readonly number[] =>
  chatsOf(...from).map(({ chat }) => chat);

describe('what falls due', () => {
  it('for the team goes to its group, and without one to its owner and leads', () => {
    expect(chats('team', { members, groups: [-100] })).toEqual([-100]);
    expect(chats('team', { members, groups: [] })).toEqual([1, 2]);
  });

  it('for one of them goes to that one alone, and to the team where nobody has the name', () => {
    expect(chats({ speaker: 'ines' }, { members, groups: [-100] })).toEqual([3]);
    expect(chats({ speaker: 'telegram:3' }, { members, groups: [-100] })).toEqual([3]);
    expect(chats({ speaker: 'gone' }, { members, groups: [-100] })).toEqual([-100]);
  });

  it('for one of them with the team goes to each chat once', () => {
    expect(chats({ speaker: 'ines', withTeam: true }, { members, groups: [-100] })).toEqual([3, -100]);
    expect(chats({ speaker: 'marit', withTeam: true }, { members, groups: [] })).toEqual([2, 1]);
    expect(chats({ speaker: 'gone', withTeam: true }, { members, groups: [] })).toEqual([1, 2]);
  });
});

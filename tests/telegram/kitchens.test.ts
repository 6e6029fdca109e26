// Two kitchens in one database, with one bot: they never see each other.
import { expect, it } from 'vitest';
import { ask, cardIn, quiet, type Team, withTeam } from './talk.ts';

interface Two extends Team {
  /** Owns the other kitchen. */
  readonly other: number;
}

async function twoKitchens(): Promise<Two> {
  const team = await withTeam(['kitchen', 'other']);
  const other = team.api.addUser({ first_name: 'Maja' }).id;
  expect(await ask(team, other, `/start ${team.bot.claims[0] ?? ''}`)).toContain('You own this kitchen');
  return { ...team, other };
}

it('keeps the tests, prices and names of each', async () => {
  const team = await twoKitchens();
  const { api, owner, other } = team;
  await ask(team, owner, 'ribeye 14.2 lb at 7.40');
  expect(await ask(team, other, 'trim 1.1')).toContain('No piece');
  expect(await ask(team, other, "what's ribeye at")).not.toContain('7.40');
  expect(await ask(team, other, 'where are we')).toContain('No piece');
  await ask(team, other, 'ribeye 20 lb at 8.10');
  expect(cardIn(team, owner).text).toContain('14.2 lb');
  expect(cardIn(team, other).text).toContain('20 lb');
  expect(api.seenFromBot(other).some(({ text }) => text.startsWith('ribeye 14.2'))).toBe(false);
});

it('lets nobody press what is of the other, though they guess it', async () => {
  const team = await twoKitchens();
  const { api, owner, other } = team;
  await ask(team, owner, 'ribeye 14.2 lb');
  await ask(team, owner, 'trim 1.1');
  await ask(team, other, 'ribeye 20 lb');
  const data = cardIn(team, owner).buttons.flat()[0]?.data ?? '';
  for (const chat of [other, owner]) {
    const message_id = cardIn(team, chat).message_id;
    const made = api.press({ user: other, chat, message_id, data, forged: true });
    await quiet(team);
    expect(api.pressAnswer(made.callbackId)?.text).toContain('old');
  }
  expect(cardIn(team, owner).text).toContain('trim 1.1 lb');
});

it('lets the owner of one remove, invite to and read nothing of the other', async () => {
  const team = await twoKitchens();
  const { bot, owner, other, api } = team;
  await ask(team, other, 'remove Tobin');
  expect((await bot.store.members('kitchen')).map(({ name }) => name)).toContain('Tobin');
  const link = await ask(team, other, 'invite a cutter');
  const code = /start=([\w-]+)/.exec(link)?.[1] ?? '';
  expect(await ask(team, owner, `/start ${code}`)).toContain('another kitchen');
  expect((await bot.store.members('other')).map(({ name }) => name)).toEqual(['Maja']);
  const { id } = api.addGroup({ title: 'Theirs', owner: other, members: [owner] });
  api.addBot({ chat: id, by: other, as: 'administrator' });
  await quiet(team);
  const before = api.seenFromBot(id).length;
  api.say({ from: owner, chat: id, text: 'ribeye 14.2 lb' });
  await quiet(team);
  expect(api.seenFromBot(id)).toHaveLength(before);
});

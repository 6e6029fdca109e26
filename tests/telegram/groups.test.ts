// The team's group: joined by an owner's deed, silent but for what is for it.
import { expect, it } from 'vitest';
import { recordedTexts } from './running.ts';
import { ask, cardIn, lastWords, quiet, shownBy, type Team, withTeam } from './talk.ts';

async function withGroup(): Promise<Team & { readonly group: number }> {
  const team = await withTeam();
  const { api, owner, cutter } = team;
  const { id: group } = api.addGroup({ title: 'The block', owner, members: [cutter] });
  api.addBot({ chat: group, by: owner, as: 'administrator' });
  await quiet(team);
  return { ...team, group };
}

it('stays in a group where an owner brought it, and says so', async () => {
  const { api, group } = await withGroup();
  expect(api.seenFromBot(group)[0]?.text).toContain('group');
  expect(api.countEffects({ method: 'leaveChat' })).toBe(0);
});

it.each(['cutter', 'stranger'] as const)('leaves a group where a %s brought it', async (who) => {
  const team = await withTeam();
  const { api, cutter } = team;
  const by = who === 'cutter' ? cutter : api.addUser({ first_name: 'Nosy' }).id;
  const { id } = api.addGroup({ title: 'Elsewhere', owner: by });
  api.addBot({ chat: id, by });
  await quiet(team);
  expect(api.countEffects({ method: 'leaveChat', chat: id })).toBe(1);
  expect(api.effects({ method: 'sendMessage', chat: id })).toHaveLength(1);
});

it('records what is said there, on one card, and is silent to talk', async () => {
  const team = await withGroup();
  const { api, owner, cutter, group, path } = team;
  expect(await ask(team, owner, 'ribeye 14.2 lb at 7.40', group)).toContain('Ines: ribeye 14.2 lb');
  expect(await ask(team, cutter, 'trim 1.1', group)).toBe('Tobin: trim 1.1 lb, 7.7 %, 13.1 lb to go');
  const before = api.seenFromBot(group).length;
  for (const text of ['morning all', 'who has the big knife', 'lunch at 12'])
    api.say({ from: cutter, chat: group, text });
  await quiet(team);
  expect(api.seenFromBot(group)).toHaveLength(before);
  expect(recordedTexts(path)).toEqual(['ribeye 14.2 lb at 7.40', 'trim 1.1']);
  expect(cardIn(team, group).text).not.toContain('$');
});

it('tells costs to nobody there, the owner neither', async () => {
  const team = await withGroup();
  const { api, owner, group } = team;
  for (const text of [
    'ribeye 14.2 lb at 7.40',
    "what's ribeye at",
    'cut or buy ribeye',
    'ready cut 9.85',
    'trim is worth 1.50',
    '11 portions 16 oz',
    'portions weigh 14',
    'done',
    'done',
  ])
    await ask(team, owner, text, group);
  const shown = api.seenFromBot(group).map(({ text }) => text);
  expect(shown.filter((text) => /[$]|9\.85|1\.50/.test(text))).toEqual([]);
  expect(shown.some((text) => text.includes('Costs are'))).toBe(true);
});

it('takes an answer to a card for an entry of its test', async () => {
  const team = await withGroup();
  const { api, owner, cutter, group } = team;
  await ask(team, owner, 'ribeye 14.2 lb', group);
  const ribeye = cardIn(team, group).message_id;
  await ask(team, owner, 'striploin 12 lb', group);
  api.say({ from: cutter, chat: group, text: 'trim 1.1', replyTo: ribeye });
  await quiet(team);
  const cards = api.seenFromBot(group).filter(({ text }) => text.includes('trim 1.1 lb'));
  expect(cards.map(({ message_id }) => message_id)).toEqual([ribeye]);
  // From then on that test is theirs.
  expect(await ask(team, cutter, 'fat 1.9', group)).toContain('ribeye');
});

it('answers its name, and no command for another bot', async () => {
  const team = await withGroup();
  const { api, owner, group } = team;
  const username =
    (await team.bot.store.members('kitchen')).length > 0
      ? api.seenFromBot(group)[0]?.message.from?.username
      : '';
  expect(await ask(team, owner, `@${username ?? ''} what a day`, group)).toContain('not recorded');
  expect(await ask(team, owner, `/help@${username ?? ''}`, group)).not.toBe('');
  expect(
    await shownBy(team, group, () => api.say({ from: owner, chat: group, text: '/help@other_bot' })),
  ).toEqual([]);
});

it('lets only who was asked press an answer, and anybody of the kitchen close', async () => {
  const team = await withGroup();
  const { api, owner, cutter, group } = team;
  await ask(team, owner, 'ribeye 14.2 lb', group);
  await ask(team, owner, 'trim 1.1', group);
  const [question] = await shownBy(team, group, () =>
    api.say({ from: owner, chat: group, text: 'trim 1.3' }),
  );
  const message_id = question?.message_id ?? 0;
  const foreign = api.press({ user: cutter, chat: group, message_id, text: 'Add' });
  await quiet(team);
  expect(api.pressAnswer(foreign.callbackId)?.text).toContain('Ines');
  const stranger = api.addUser({ first_name: 'Nosy' }).id;
  api.addMember({ chat: group, user: stranger });
  const strange = api.press({ user: stranger, chat: group, message_id, text: 'Add' });
  await quiet(team);
  expect(api.pressAnswer(strange.callbackId)?.text).toContain('invite');
  api.press({ user: cutter, chat: group, message_id: cardIn(team, group).message_id, text: 'Done' });
  await quiet(team);
  expect(lastWords(api.seenFromBot(group))).toMatch(/close|portions/i);
});

it('takes what strangers, the anonymous and forwarders say there for no entry', async () => {
  const team = await withGroup();
  const { api, owner, group, path } = team;
  const stranger = api.addUser({ first_name: 'Nosy' }).id;
  api.addMember({ chat: group, user: stranger });
  const before = api.seenFromBot(group).length;
  api.say({ from: stranger, chat: group, text: 'ribeye 14.2 lb at 7.40' });
  api.say({ from: owner, chat: group, text: 'ribeye 14.2 lb at 7.40', as: 'anonymous admin' });
  api.say({ from: owner, chat: group, text: 'ribeye 14.2 lb at 7.40', forwardOf: 'hidden user' });
  api.say({ from: owner, chat: group, text: 'ribeye 14.2 lb at 7.40', viaBot: 'other_bot' });
  await quiet(team);
  expect(recordedTexts(path)).toEqual([]);
  expect(api.seenFromBot(group)).toHaveLength(before);
});

it.each([false, true])(
  'keeps everything when the group becomes a supergroup (told of members: %s)',
  async (withMemberUpdates) => {
    const team = await withGroup();
    const { api, owner, group, path } = team;
    await ask(team, owner, 'ribeye 14.2 lb', group);
    const { id } = api.migrate({ chat: group, by: owner, withMemberUpdates });
    await quiet(team);
    expect(await ask(team, owner, 'trim 1.1', id)).toContain('trim 1.1 lb');
    expect(recordedTexts(path)).toEqual(['ribeye 14.2 lb', 'trim 1.1']);
    expect(api.countEffects({ method: 'leaveChat' })).toBe(0);
  },
);

it('gives no invite there', async () => {
  const team = await withGroup();
  const { owner, group } = team;
  const told = await ask(team, owner, 'invite a cutter', group);
  expect(told).toContain('alone');
  expect(told).not.toContain('start=');
});

// The running card of a test, the sign under an entry, buttons, and entries that are put right by editing.
import { expect, it } from 'vitest';
import { recordedTexts } from './running.ts';
import { ask, cardIn, quiet, shownBy, type Team, withTeam } from './talk.ts';

const press = async (team: Team, user: number, label: string, chat = user): Promise<string | undefined> => {
  const found = team.api
    .seenFromBot(chat)
    .findLast(({ buttons }) => buttons.flat().some(({ text }) => text === label));
  const made = team.api.press({ user, chat, message_id: found?.message_id ?? 0, text: label });
  await quiet(team);
  return team.api.pressAnswer(made.callbackId)?.text;
};

it('keeps one card a test, edited in place, and puts a sign under each entry', async () => {
  const team = await withTeam();
  const { api, owner } = team;
  await ask(team, owner, 'ribeye 14.2 lb at 7.40');
  const before = api.seenFromBot(owner).length;
  expect(await ask(team, owner, 'trim 1.1')).toBe('trim 1.1 lb, 7.7 %, 13.1 lb to go');
  expect(await ask(team, owner, 'fat 1.9')).toBe('fat 1.9 lb, 13.4 %, 11.2 lb to go');
  expect(api.seenFromBot(owner)).toHaveLength(before);
  const said = api.seen(owner).filter(({ by, text }) => by === owner && /^(ribeye|trim|fat)/.test(text));
  expect(said.map(({ reaction }) => reaction)).toEqual(['✍', '✍', '✍']);
  const { text, silent, isEdited } = cardIn(team, owner);
  expect(text.split('\n')).toEqual([
    'ribeye 14.2 lb, $7.40/lb, $105.08 in all',
    'trim 1.1 lb, 7.7 %',
    'fat 1.9 lb, 13.4 %',
    '11.2 lb to go',
    '',
    'fat 1.9 lb, 13.4 %, 11.2 lb to go',
  ]);
  expect([silent, isEdited]).toEqual([true, true]);
});

it('gives the result as a message of its own, and ends the card', async () => {
  const team = await withTeam();
  const { owner } = team;
  for (const text of ['ribeye 14.2 lb at 7.40', 'trim 1.1', 'fat 1.9', '11 portions 16 oz'])
    await ask(team, owner, text);
  const shown = await shownBy(team, owner, () =>
    team.api.say({ from: owner, text: 'portions weigh 11.2, done' }),
  );
  expect(shown).toHaveLength(2);
  expect(shown.every(({ buttons }) => buttons.length === 0)).toBe(true);
  expect(shown[1]?.text).toContain('usable cost $9.38/lb');
  expect(shown[0]?.text).toMatch(/^ribeye closed/);
});

it('takes back by a button, once, and only what it stood under', async () => {
  const team = await withTeam();
  const { api, owner, path } = team;
  await ask(team, owner, 'ribeye 14.2 lb');
  await ask(team, owner, 'trim 1.1');
  const { message_id, buttons } = cardIn(team, owner);
  const data = buttons.flat().find(({ text }) => text === 'Undo')?.data ?? '';
  expect(await press(team, owner, 'Undo')).toContain('Took back');
  expect(cardIn(team, owner).text).not.toContain('trim 1.1 lb, 7.7 %\n');
  const again = api.press({ user: owner, chat: owner, message_id, data, forged: true });
  await quiet(team);
  expect(api.pressAnswer(again.callbackId)?.text).toContain('old');
  expect(recordedTexts(path)).toEqual(['ribeye 14.2 lb', 'trim 1.1', 'Undo']);
});

it('does not take back another entry than the one that it stood under', async () => {
  const team = await withTeam();
  const { api, owner } = team;
  await ask(team, owner, 'ribeye 14.2 lb');
  await ask(team, owner, 'trim 1.1');
  const { message_id, buttons } = cardIn(team, owner);
  const data = buttons.flat().find(({ text }) => text === 'Undo')?.data ?? '';
  await ask(team, owner, 'fat 1.9');
  const late = api.press({ user: owner, chat: owner, message_id, data, forged: true });
  await quiet(team);
  expect(api.pressAnswer(late.callbackId)?.text).toContain('old');
  expect(cardIn(team, owner).text).toContain('fat 1.9 lb');
});

it('asks with buttons, which answer for who was asked, once', async () => {
  const team = await withTeam();
  const { api, owner } = team;
  await ask(team, owner, 'ribeye 14.2 lb');
  await ask(team, owner, 'trim 1.1');
  const [question] = await shownBy(team, owner, () => api.say({ from: owner, text: 'trim 1.3' }));
  expect(question?.buttons.flat().map(({ text }) => text)).toEqual(['Add', 'Replace']);
  await press(team, owner, 'Replace');
  expect(cardIn(team, owner).text).toContain('trim 1.3 lb');
  const bare = api.seenFromBot(owner).find((each) => each.message_id === question?.message_id);
  expect(bare?.buttons).toEqual([]);
});

it('lets the buttons of a question that was answered in words mean nothing', async () => {
  const team = await withTeam();
  const { api, owner } = team;
  await ask(team, owner, 'ribeye 14.2 lb');
  await ask(team, owner, 'trim 1.1');
  const [question] = await shownBy(team, owner, () => api.say({ from: owner, text: 'trim 1.3' }));
  await ask(team, owner, 'replace');
  const add = question?.buttons.flat()[0]?.data ?? '';
  const late = api.press({
    user: owner,
    chat: owner,
    message_id: question?.message_id ?? 0,
    data: add,
    forged: true,
  });
  await quiet(team);
  expect(api.pressAnswer(late.callbackId)?.text).toContain('old');
  expect(cardIn(team, owner).text).toContain('trim 1.3 lb');
});

it('counts one press under two numbers once', async () => {
  const team = await withTeam();
  const { api, owner, path } = team;
  await ask(team, owner, 'ribeye 14.2 lb');
  await ask(team, owner, 'trim 1.1');
  await ask(team, owner, 'fat 1.9');
  const { message_id } = cardIn(team, owner);
  const first = api.press({ user: owner, chat: owner, message_id, text: 'Undo' });
  api.repeatUpdateUnderNewId(first.updateId ?? 0);
  await quiet(team);
  expect(recordedTexts(path).filter((text) => text === 'Undo')).toHaveLength(1);
  expect(cardIn(team, owner).text).toContain('trim 1.1 lb');
});

it.each([
  ['a weight', 'trim 1.1', 'trim 1.3', 'trim 1.3 lb, 9.2 %'],
  ['a part', 'trim 1.1', 'fat 1.1', 'fat 1.1 lb, 7.7 %'],
  ['several entries', 'trim 1.1, fat 1.9', 'trim 1.3, fat 2.0', 'fat 2 lb, 14.1 %'],
  ['one entry in two', 'trim 1.1', 'trim 1.3, fat 1.9', 'fat 1.9 lb, 13.4 %'],
])('takes an edit for a correction of its own entry: %s', async (_, before, after, shown) => {
  const team = await withTeam();
  const { api, owner } = team;
  await ask(team, owner, 'ribeye 14.2 lb at 7.40');
  const { message } = api.say({ from: owner, text: before });
  await quiet(team);
  await ask(team, owner, 'purge 0.2');
  api.editOwn({ chat: owner, message_id: message.message_id, text: after });
  await quiet(team);
  const glance = cardIn(team, owner).text.split('\n\n')[0] ?? '';
  expect(glance).toContain(shown);
  expect(glance).toContain('purge 0.2 lb');
  if (after === 'fat 1.1') expect(glance).not.toContain('trim');
});

it('puts the piece itself right by an edit, and keeps what was weighed of it', async () => {
  const team = await withTeam();
  const { api, owner } = team;
  const { message } = api.say({ from: owner, text: 'ribeye 14.2 lb at 7.40' });
  await quiet(team);
  await ask(team, owner, 'trim 1.1');
  api.editOwn({ chat: owner, message_id: message.message_id, text: 'ribeye 14.6 lb at 7.40' });
  await quiet(team);
  const { text } = cardIn(team, owner);
  expect(text).toContain('ribeye 14.6 lb');
  expect(text).toContain('trim 1.1 lb, 7.5 %');
});

it.each([
  ['no entry', 'what a day'],
  ['more than the piece', 'trim 41'],
])('leaves an entry as it stands where its edit is %s', async (_, after) => {
  const team = await withTeam();
  const { api, owner, path } = team;
  await ask(team, owner, 'ribeye 14.2 lb');
  const { message } = api.say({ from: owner, text: 'trim 1.1' });
  await quiet(team);
  const shown = await shownBy(team, owner, () =>
    api.editOwn({ chat: owner, message_id: message.message_id, text: after }),
  );
  expect(shown.at(-1)?.text).toContain('stands');
  expect(recordedTexts(path)).toEqual(['ribeye 14.2 lb', 'trim 1.1']);
});

it('shows what one records on the card of the other, without costs for who may not see them', async () => {
  const team = await withTeam();
  const { api, owner, cutter } = team;
  await ask(team, owner, 'ribeye 14.2 lb at 7.40');
  await ask(team, cutter, 'trim 1.1');
  for (const text of [
    'fat 1.9',
    'ribeye is 7.95 now',
    'trim is worth 1.50',
    'packing 15 cents each',
    'took 25 minutes at 18 an hour',
    'ready cut 9.85',
    'no, 9.95',
    '11 portions 16 oz, portions weigh 11.2',
    'trim 1.2 worth 1.60, what is ribeye at',
    'replace',
    'where are we',
    'done',
    'undo',
    'done',
  ])
    await ask(team, owner, text);
  const everShown = [
    ...api.effects({ method: 'editMessageText', chat: cutter }),
    ...api.effects({ method: 'sendMessage', chat: cutter }),
  ];
  const words = everShown.map(({ parameters }) => String(parameters['text']));
  expect(words.some((text) => text.includes('Ines: fat 1.9 lb'))).toBe(true);
  expect(words.filter((text) => /[$]|7\.40|7\.95|9\.[0-9]5|1\.50|1\.60|usable|cheaper/i.test(text))).toEqual(
    [],
  );
});

it('offers on the card what may not have arrived, and sends it once when it is asked for', async () => {
  const team = await withTeam();
  const { api, owner } = team;
  await ask(team, owner, 'ribeye 14.2 lb at 7.40');
  api.fail({
    method: 'sendMessage',
    when: { kind: 'first', count: 1 },
    answer: { kind: 'drop' },
    effect: false,
  });
  await shownBy(team, owner, () => api.say({ from: owner, text: 'menu price at 32 percent' }));
  const card = cardIn(team, owner);
  expect(card.text).toContain('may not have reached you');
  expect(card.buttons.flat().map(({ text }) => text)).toContain('Show it again');
  const before = api.seenFromBot(owner).length;
  api.press({ user: owner, chat: owner, message_id: card.message_id, text: 'Show it again' });
  await quiet(team);
  expect(api.seenFromBot(owner)).toHaveLength(before + 1);
  expect(api.seenFromBot(owner).at(-1)?.text).toContain('portion');
  await ask(team, owner, 'trim 1.1');
  expect(cardIn(team, owner).text).not.toContain('may not have reached you');
});

// Faults by script, outages, limits, and the log that tells what took effect.
import { expect, it } from 'vitest';
import * as answer from './faults/answers.ts';
import { always, calls, chance, drop, first, from } from './faults/answers.ts';
import { given, kitchenGroup, refusedWith } from './given.ts';

const method = 'sendMessage';

it.each([
  [answer.flood(7), '429 Too Many Requests: retry after 7'],
  [answer.serverError(), '500 Internal Server Error'],
  [answer.serverError(503), '503 Service Unavailable'],
  [answer.unauthorized, '401 Unauthorized'],
  [answer.forbidden(), '403 Forbidden: bot was blocked by the user'],
  [answer.conflict, '409 Conflict: terminated by other'],
  [answer.badRequest('Bad Request: TOPIC_CLOSED'), '400 Bad Request: TOPIC_CLOSED'],
  [answer.html(), 'http'],
  [answer.truncated, 'http'],
  [answer.drop, 'http'],
] as const)('answers once with %j, then is well again', async (fault, expected) => {
  const { service, bot, cook } = await given();
  service.fail({ method, when: first(1), answer: fault });
  expect(await refusedWith(bot.sendMessage(cook, 'x'))).toContain(expected);
  expect(await refusedWith(bot.sendMessage(cook, 'y'))).toBe('done');
});

it('says how long a flooded bot must wait', async () => {
  const { service, bot, cook } = await given();
  service.fail({ when: always, answer: answer.flood(3600) });
  await expect(bot.sendMessage(cook, 'x')).rejects.toMatchObject({ parameters: { retry_after: 3600 } });
});

it.each([
  [false, []],
  [true, ['x']],
] as const)('drops a connection, with the effect: %j', async (effect, texts) => {
  const { service, bot, cook } = await given();
  service.fail({ method, when: first(1), answer: drop, effect });
  expect(await refusedWith(bot.sendMessage(cook, 'x'))).toBe('http');
  expect(service.seenFromBot(cook).map(({ text }) => text)).toEqual(texts);
  expect(service.countEffects({ method, chat: cook, text: 'x' })).toBe(texts.length);
  expect(service.calls({ method })[0]).toMatchObject({ took: effect, answer: { kind: 'dropped' } });
});

it('never answers, and leaves the caller to hang up', async () => {
  const { service, bot, cook } = await given();
  service.fail({ method, when: always, answer: answer.mute });
  const caller = new AbortController();
  const call = refusedWith(bot.sendMessage(cook, 'x', {}, caller.signal as never));
  await service.awaitCalls({ method }, 1);
  caller.abort();
  expect(await call).toBe('http');
  expect(service.countEffects({ method })).toBe(0);
});

it.each([undefined, false])(
  'is late, with an early effect unless it is told otherwise (%j)',
  async (effect) => {
    const { service, bot, cook } = await given();
    service.fail({
      method,
      when: always,
      answer: answer.late(1),
      ...(effect === undefined ? {} : { effect }),
    });
    expect((await bot.sendMessage(cook, 'x')).text).toBe('x');
  },
);

it.each([
  [calls(2, 4), [1, 3, 5]],
  [from(3), [1, 2]],
  [first(3), [4, 5]],
])('meets the calls %j', async (when, passing) => {
  const { service, bot, cook } = await given();
  service.fail({ method, when, answer: drop });
  for (const number of [1, 2, 3, 4, 5]) await refusedWith(bot.sendMessage(cook, String(number)));
  expect(service.seenFromBot(cook).map(({ text }) => Number(text))).toEqual(passing);
});

it('meets the same calls by chance for the same seed', async () => {
  const runs = [];
  for (const seed of [5, 5, 6]) {
    const { service, bot, cook } = await given();
    service.fail({ when: chance(0.5, seed), answer: answer.serverError() });
    const answers = [];
    for (let call = 0; call < 40; call += 1) answers.push(await refusedWith(bot.sendMessage(cook, 'x')));
    runs.push(answers.join());
  }
  expect(runs[0]).toBe(runs[1]);
  expect(runs[0]).not.toBe(runs[2]);
  expect(runs[0]).toContain('done');
  expect(runs[0]).toContain('500');
});

it('fails in one chat only', async () => {
  const all = await given();
  const { service, bot, cook } = all;
  const chat = kitchenGroup(all);
  service.fail({ method, chat, when: always, answer: drop });
  expect(await refusedWith(bot.sendMessage(chat, 'x'))).toBe('http');
  expect(await refusedWith(bot.sendMessage(cook, 'x'))).toBe('done');
  service.heal();
  expect(await refusedWith(bot.sendMessage(chat, 'x'))).toBe('done');
});

it('confirms nothing when a poll is dropped before its effect', async () => {
  const { service, bot } = await given();
  service.fail({ method: 'getUpdates', when: first(1), answer: drop });
  expect(await refusedWith(bot.getUpdates({ offset: -1 }))).toBe('http');
  expect(await bot.getUpdates()).toHaveLength(1);
});

it.each(['refuse', 'drop'] as const)('is out (%s) and comes back at the same address', async (mode) => {
  const { service, bot, cook } = await given();
  await service.outage(mode);
  expect(await refusedWith(bot.sendMessage(cook, 'x'))).toBe('http');
  service.say({ from: cook, text: 'in the outage' });
  await service.recover();
  expect(await bot.getUpdates()).toHaveLength(2);
  expect(service.countEffects({ method })).toBe(0);
});

it('holds a group to its messages and edits a minute', async () => {
  const all = await given({ limits: { groupPerMinute: 2, groupEditsPerMinute: 1 } });
  const { service, bot, cook } = all;
  const chat = kitchenGroup(all);
  const { message_id } = await bot.sendMessage(chat, '1');
  await bot.sendMessage(chat, '2');
  expect(await refusedWith(bot.sendMessage(chat, '3'))).toMatch(/^429 .* retry after \d+$/);
  expect(await refusedWith(bot.sendMessage(cook, 'elsewhere'))).toBe('done');
  expect(await refusedWith(bot.editMessageText(chat, message_id, '1a'))).toBe('done');
  expect(await refusedWith(bot.editMessageText(chat, message_id, '1b'))).toContain('429');
  service.advance(61);
  expect(await refusedWith(bot.sendMessage(chat, '3'))).toBe('done');
});

it('finds what arrived twice', async () => {
  const { service, bot, cook } = await given();
  for (const text of ['once', 'twice', 'twice']) await bot.sendMessage(cook, text);
  expect(service.repeatedTexts()).toEqual([{ chat: cook, text: 'twice', count: 2 }]);
});

it('logs what was asked, without tokens and bytes', async () => {
  const { service, bot, cook } = await given();
  await bot.sendMessage(cook, 'x');
  await refusedWith(bot.sendMessage(cook, ''));
  const [sent, refused] = service.calls({ method });
  expect(sent).toMatchObject({ number: 1, chat: cook, parameters: { chat_id: cook, text: 'x' }, took: true });
  expect(sent?.answer).toMatchObject({ kind: 'answered', status: 200, body: { ok: true } });
  expect(refused).toMatchObject({ took: false, answer: { status: 400 } });
  expect(JSON.stringify(service.calls())).not.toContain(service.token);
});

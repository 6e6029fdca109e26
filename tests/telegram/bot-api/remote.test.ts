// The service in a process of its own: the same controls, and it outlives the bots of a test.
import { expect, it, onTestFinished } from 'vitest';
import { always, drop } from './faults/answers.ts';
import { clientOf, refusedWith } from './given.ts';
import { spawnBotApi, type RemoteBotApi } from './remote.ts';

async function spawned(): Promise<RemoteBotApi> {
  const service = await spawnBotApi({ botUsername: 'far_bot' });
  onTestFinished(() => service.close());
  return service;
}

it('is told what to do over HTTP', async () => {
  const service = await spawned();
  const bot = clientOf(service);
  expect((await bot.getMe()).username).toBe('far_bot');
  const { id } = await service.addUser({ first_name: 'Ana' });
  await service.start(id);
  expect(await bot.getUpdates()).toHaveLength(1);
  const arrived = service.awaitCalls({ method: 'sendMessage', took: true }, 1);
  await bot.sendMessage(id, 'card');
  expect(await arrived).toMatchObject([{ chat: id, took: true }]);
  expect(await service.seenFromBot(id)).toMatchObject([{ text: 'card' }]);
});

it('is scripted and goes out while it can still be told', async () => {
  const service = await spawned();
  const bot = clientOf(service);
  const fault = await service.fail({ method: 'getMe', when: always, answer: drop });
  expect(await refusedWith(bot.getMe())).toBe('http');
  await service.heal(fault);
  await service.outage('refuse');
  expect(await refusedWith(bot.getMe())).toBe('http');
  await service.recover();
  expect(await refusedWith(bot.getMe())).toBe('done');
  expect(await service.countEffects({ method: 'getMe' })).toBe(1);
});

it('says what a test has got wrong', async () => {
  const service = await spawned();
  await expect(service.say({ from: 1, text: 'x' })).rejects.toThrow('no chat 1');
});

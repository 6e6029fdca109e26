// Updates by webhook: the secret, the order in a chat, and another try for what was not taken.
import { createServer } from 'node:http';
import { once } from 'node:events';
import type { AddressInfo } from 'node:net';
import { json } from 'node:stream/consumers';
import type { Update } from 'grammy/types';
import { expect, it, onTestFinished } from 'vitest';
import { given, refusedWith } from './given.ts';

interface Hook {
  readonly url: string;
  readonly secrets: unknown[];
  readonly texts: unknown[];
}

/** A bot that listens, and answers each update with the next of the statuses, then with 200. */
async function hook(statuses: number[] = []): Promise<Hook> {
  const heard = { secrets: [] as unknown[], texts: [] as unknown[] };
  const server = createServer((request, response) => {
    void json(request).then((update) => {
      heard.secrets.push(request.headers['x-telegram-bot-api-secret-token']);
      heard.texts.push((update as Update).message?.text);
      response.writeHead(statuses.shift() ?? 200).end();
    });
  }).listen(0, '127.0.0.1');
  await once(server, 'listening');
  onTestFinished(() => {
    server.closeAllConnections();
    server.close();
  });
  return { url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/hook`, ...heard };
}

it('delivers with the secret what waits and what comes', async () => {
  const { service, bot, cook } = await given();
  const { url, secrets, texts } = await hook();
  await bot.setWebhook(url, { secret_token: 'hush' });
  service.say({ from: cook, text: 'trim 1.1' });
  await service.awaitConfirmed();
  expect(texts).toEqual(['/start', 'trim 1.1']);
  expect(secrets).toEqual(['hush', 'hush']);
  expect(await bot.getWebhookInfo()).toMatchObject({ url, pending_update_count: 0 });
});

it('tries again until it is taken, and keeps the order', async () => {
  const { service, bot, cook } = await given({ webhookRetryMs: 1 });
  const { url, texts } = await hook([500, 302, 200, 503]);
  service.say({ from: cook, text: 'trim 1.1' });
  await bot.setWebhook(url);
  await service.awaitConfirmed();
  expect(texts).toEqual(['/start', '/start', '/start', 'trim 1.1', 'trim 1.1']);
  expect(await bot.getWebhookInfo()).toHaveProperty(
    'last_error_message',
    'Wrong response from the webhook: 503',
  );
  expect(service.effects({ method: 'webhook' })).toHaveLength(2);
});

it('delivers twice where the answer of the bot is lost', async () => {
  const { service, bot } = await given({ webhookRetryMs: 1 });
  const { url, texts } = await hook();
  const when = { kind: 'first', count: 1 } as const;
  service.fail({ method: 'webhook', when, answer: { kind: 'drop' }, effect: true });
  await bot.setWebhook(url);
  await service.awaitConfirmed();
  expect(texts).toEqual(['/start', '/start']);
});

it('does not let one chat hold up another', async () => {
  const { service, bot } = await given({ webhookRetryMs: 1 });
  const { url, texts } = await hook();
  const other = service.addUser({ first_name: 'Bo' }).id;
  const [{ message } = {}] = service.waitingUpdates();
  const fault = { method: 'webhook', chat: message?.chat.id ?? 0, answer: { kind: 'drop' } } as const;
  const id = service.fail({ ...fault, when: { kind: 'always' } });
  await bot.setWebhook(url);
  service.start(other, 'ME');
  await expect.poll(() => texts).toEqual(['/start ME']);
  service.heal(id);
  await service.awaitConfirmed();
  expect(texts).toEqual(['/start ME', '/start']);
});

it('excludes polling, and the other way round', async () => {
  const { bot } = await given();
  const { url } = await hook();
  await bot.getUpdates({ offset: -1 });
  await bot.setWebhook(url);
  expect(await refusedWith(bot.getUpdates())).toContain("409 Conflict: can't use getUpdates method");
  await bot.deleteWebhook({ drop_pending_updates: true });
  expect(await bot.getUpdates()).toEqual([]);
  expect(await refusedWith(bot.setWebhook(url, { secret_token: 'a b' }))).toContain('unallowed characters');
});

it('rests in an outage', async () => {
  const { service, bot, cook } = await given();
  const { url, texts } = await hook();
  await bot.setWebhook(url);
  await service.awaitConfirmed();
  await service.outage('refuse');
  service.say({ from: cook, text: 'in the outage' });
  expect(service.waitingUpdates()).toHaveLength(1);
  await service.recover();
  await service.awaitConfirmed();
  expect(texts).toEqual(['/start', 'in the outage']);
});

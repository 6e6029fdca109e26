// The bot as it is started and stopped: its claim code, health, log, and a clean end.
import { createServer } from 'node:net';
import { once } from 'node:events';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { scratchFolder } from '../storage/scratch.ts';
import { type BotApi, startBotApi } from './bot-api/start.ts';
import { newPath, recordedTexts, spawnBot } from './running.ts';

async function service(): Promise<BotApi> {
  const api = await startBotApi();
  onTestFinished(() => api.close());
  return api;
}

async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  server.close();
  await once(server, 'close');
  return typeof address === 'object' && address !== null ? address.port : 0;
}

const settings = (api: BotApi, more: Readonly<Record<string, string>> = {}) => ({
  DATABASE_URL: `sqlite:${newPath()}`,
  TELEGRAM_BOT_TOKEN: api.token,
  TELEGRAM_API_ROOT: api.url,
  LOG_LEVEL: 'trace',
  ...more,
});

async function statusOf(url: string): Promise<number> {
  return fetch(url).then(
    ({ status }) => status,
    () => 0,
  );
}

it('prints a claim code once, and is claimed and used with it', async () => {
  const api = await service();
  const { id: owner } = api.addUser({ first_name: 'Ines' });
  const environment = settings(api);
  const bot = spawnBot(environment);
  await expect.poll(bot.output, { timeout: 10_000 }).toMatch(/\/start [\w-]{32}/);
  const code = /\/start ([\w-]{32})/.exec(bot.output())?.[1];
  api.start(owner, code);
  api.say({ from: owner, text: 'ribeye 14.2 lb at 7.40' });
  await api.awaitCalls({ method: 'sendMessage' }, 2);
  expect(await bot.kill('SIGTERM')).toBe(0);
  const again = spawnBot(environment);
  api.say({ from: owner, text: 'trim 1.1' });
  await api.awaitCalls({ method: 'sendMessage' }, 3);
  expect(await again.kill('SIGTERM')).toBe(0);
  expect(again.output()).not.toContain('/start');
  expect(recordedTexts(environment.DATABASE_URL.slice('sqlite:'.length))).toHaveLength(2);
});

it('logs no words, no prices and no token, whatever fails', async () => {
  const api = await service();
  const { id: owner } = api.addUser({ first_name: 'Ines' });
  const chance = (seed: number) => ({ kind: 'chance', seed, probability: 0.3 }) as const;
  api.fail({ when: chance(5), answer: { kind: 'drop' } });
  api.fail({ when: chance(6), answer: { kind: 'html', code: 502 } });
  api.fail({ method: 'sendMessage', when: chance(8), answer: { kind: 'error', code: 400 } });
  const bot = spawnBot(settings(api, { OWNER_TELEGRAM_ID: String(owner) }));
  for (let count = 1; count <= 10; count += 1)
    api.say({ from: owner, text: `ribeye is 7.4${count % 10} now` });
  await api.awaitCalls({ method: 'sendMessage' }, 3);
  await api.outage('refuse');
  await expect.poll(bot.output, { timeout: 10_000 }).toContain('failed');
  expect(await bot.kill('SIGTERM')).toBe(0);
  expect(bot.output()).toContain('send failed');
  expect(bot.output()).not.toMatch(/ribeye|7\.4|AAtest|Ines/);
});

it('ends within seconds in the middle of a poll, with nothing confirmed that is not stored', async () => {
  const api = await service();
  const { id: owner } = api.addUser({ first_name: 'Ines' });
  const bot = spawnBot(settings(api, { OWNER_TELEGRAM_ID: String(owner) }));
  await expect.poll(() => api.calls({ method: 'getUpdates' }).length, { timeout: 10_000 }).toBe(1);
  const begun = Date.now();
  expect(await bot.kill('SIGTERM')).toBe(0);
  expect(Date.now() - begun).toBeLessThan(10_000);
  api.say({ from: owner, text: 'trim 1.1' });
  expect(api.waitingUpdates()).toHaveLength(1);
});

it('ends in time also where the service has gone silent', async () => {
  const api = await service();
  const { id: owner } = api.addUser({ first_name: 'Ines' });
  api.fail({ method: 'sendMessage', when: { kind: 'always' }, answer: { kind: 'mute' } });
  const bot = spawnBot(settings(api, { OWNER_TELEGRAM_ID: String(owner) }));
  api.say({ from: owner, text: 'ribeye 14.2 lb' });
  await expect.poll(() => api.calls({ method: 'sendMessage' }).length, { timeout: 10_000 }).toBe(1);
  const begun = Date.now();
  expect(await bot.kill('SIGTERM')).toBe(0);
  expect(Date.now() - begun).toBeLessThan(10_000);
});

it('is ready while it polls, and not when the service is away from the start', async () => {
  const api = await service();
  const { id: owner } = api.addUser({ first_name: 'Ines' });
  await api.outage('refuse');
  const port = await freePort();
  const at = `http://127.0.0.1:${port}`;
  const bot = spawnBot(settings(api, { OWNER_TELEGRAM_ID: String(owner), PORT: String(port) }));
  await expect.poll(() => statusOf(`${at}/livez`), { timeout: 10_000 }).toBe(200);
  expect(await statusOf(`${at}/readyz`)).toBe(503);
  await api.recover();
  api.say({ from: owner, text: 'help' });
  await expect.poll(() => statusOf(`${at}/readyz`), { timeout: 20_000 }).toBe(200);
  expect(await statusOf(`${at}/elsewhere`)).toBe(404);
  expect(await bot.kill('SIGTERM')).toBe(0);
});

it('reads its token from a file, and says so where the service does not know it', async () => {
  const api = await service();
  const file = join(scratchFolder(), 'token');
  writeFileSync(file, '123456:another-token-than-that-of-the-service\n');
  const bot = spawnBot({ ...settings(api), TELEGRAM_BOT_TOKEN: '', TELEGRAM_BOT_TOKEN_FILE: file });
  await once(bot.child, 'close');
  expect(bot.child.exitCode).toBe(1);
  expect(bot.output()).toContain('TELEGRAM_BOT_TOKEN');
  expect(bot.output()).not.toContain('another-token');
});

it.each([
  ['TELEGRAM_BOT_TOKEN', 'no token'],
  ['TELEGRAM_BOT_TOKEN_FILE', '/nowhere/at/all'],
  ['TELEGRAM_API_ROOT', 'ftp://host'],
  ['OWNER_TELEGRAM_ID', '@ines'],
  ['PORT', '99999'],
])('names %s where it is bad, and ends with 2', async (name, value) => {
  const bot = spawnBot({ [name]: value });
  await once(bot.child, 'close');
  expect(bot.child.exitCode).toBe(2);
  expect(bot.output()).toMatch(new RegExp(`^${name} `));
});

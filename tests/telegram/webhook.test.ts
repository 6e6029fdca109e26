// Updates that the service brings: who is let in, what is stored before it is confirmed, and what the service is told of us.
import { once } from 'node:events';
import { connect } from 'node:net';
import { Readable } from 'node:stream';
import Database from 'better-sqlite3';
import { expect, it, onTestFinished, vi } from 'vitest';
import { StoreError } from '../../src/app/ports/store.ts';
import { health } from '../../src/channels/health.ts';
import { listen } from '../../src/channels/listen.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import type { SqliteStore } from '../../src/storage/sqlite/store.ts';
import { given } from './bot-api/given.ts';
import { type BotApi, startBotApi } from './bot-api/start.ts';
import { freePort, newPath, recordedTexts, runBot, type Running } from './running.ts';

const SECRET = 'a-secret-of-the-kitchen';

interface Stage {
  readonly api: BotApi;
  readonly bot: Running;
  readonly owner: number;
  readonly path: string;
  readonly url: string;
}

type Given = Partial<Parameters<typeof runBot>[0]> & {
  readonly api?: BotApi;
  readonly limits?: Parameters<typeof listen>[1];
};

async function stage({ api: ready, limits, ...more }: Given = {}): Promise<Stage> {
  const api = ready ?? (await startBotApi());
  onTestFinished(() => api.close());
  const owner = api.addUser({ first_name: 'Ines' }).id;
  const path = more.path ?? newPath();
  const port = await freePort();
  const server = await listen({ port, host: '127.0.0.1' }, limits);
  const url = `http://127.0.0.1:${port}/hook`;
  onTestFinished(() => {
    server.close();
    server.cut();
  });
  const bot = await runBot({ service: api, owner, path, webhook: { url, secret: SECRET }, ...more });
  server.serve(
    health({
      readiness: bot.readiness,
      metrics: () => Promise.resolve({ type: 'text/plain', text: '' }),
      ...(bot.take === undefined ? {} : { otherwise: bot.take }),
    }),
  );
  return { api, bot, owner, path, url };
}

const isSet = (api: BotApi): Promise<unknown> => api.awaitCalls({ method: 'setWebhook', took: true }, 1);

function storedUpdates(path: string): number {
  const db = new Database(path, { readonly: true });
  const count = db.prepare<[], number>('SELECT count(*) FROM inbox').pluck().get();
  db.close();
  return count ?? 0;
}

it('takes what waits and what comes, in order, without a poll', async () => {
  const { api, owner, path } = await stage();
  const said = ['ribeye is 7.40 now', 'striploin is 8.10 now', 'no, 8.20'];
  for (const text of said) api.say({ from: owner, text });
  await api.awaitCalls({ method: 'sendMessage' }, 3);
  expect(recordedTexts(path)).toEqual(said);
  expect(api.calls({ method: 'getUpdates' })).toEqual([]);
});

it('counts an update once whose confirmation was lost', async () => {
  const { api, owner, path } = await stage();
  const when = { kind: 'first', count: 2 } as const;
  api.fail({ method: 'webhook', when, answer: { kind: 'drop' }, effect: true });
  api.say({ from: owner, text: 'note one' });
  api.say({ from: owner, text: 'note two' });
  await api.awaitConfirmed();
  await api.awaitCalls({ method: 'sendMessage' }, 2);
  expect(recordedTexts(path)).toEqual(['note one', 'note two']);
  expect(api.effects({ method: 'webhook' }).length).toBe(4);
});

it('confirms nothing that the store could not take', async () => {
  const path = newPath();
  const store = await openSqlite(path);
  const receive = vi
    .fn((...all: Parameters<SqliteStore['receive']>) => store.receive(...all))
    .mockRejectedValueOnce(new StoreError('full', path))
    .mockRejectedValueOnce(new StoreError('readOnly', path));
  const { api, owner } = await stage({ path, store: { ...store, receive } });
  api.say({ from: owner, text: 'note one' });
  await api.awaitConfirmed();
  await api.awaitCalls({ method: 'sendMessage' }, 1);
  const statuses = api.calls({ method: 'webhook' }).map(({ answer }) => answer.status);
  expect(statuses).toEqual([503, 503, 200]);
  expect(recordedTexts(path)).toEqual(['note one']);
});

const update = (id: unknown): string => JSON.stringify({ update_id: id });
const secret = (word: string): Readonly<Record<string, string>> => ({
  'x-telegram-bot-api-secret-token': word,
});
const LONG = 'x'.repeat(1024 * 1024 + 1);

interface Knock {
  readonly path?: string;
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string;
}

it.each<[why: string, knock: Knock, status: number]>([
  ['no secret', { headers: {} }, 401],
  ['an empty secret', { headers: secret('') }, 401],
  ['another secret of the same length', { headers: secret(SECRET.replace('a-', 'b-')) }, 401],
  ['the beginning of the secret', { headers: secret(SECRET.slice(0, -1)) }, 401],
  ['more than the secret', { headers: secret(`${SECRET}x`) }, 401],
  ['no secret, and a wrong path', { headers: {}, path: '/else' }, 401],
  ['no secret, and a wrong method', { headers: {}, method: 'PUT' }, 401],
  ['no secret, and a body that is too long', { headers: {}, body: LONG }, 401],
  ['a wrong path', { path: '/else' }, 404],
  ['more than the path', { path: '/hook/' }, 404],
  ['a wrong method', { method: 'PUT' }, 405],
  ['a body that is too long', { body: LONG }, 413],
  ['no body', { body: '' }, 400],
  ['no JSON', { body: '{"update_id": 1' }, 400],
  ['no object', { body: '[1]' }, 400],
  ['no number', { body: '{"message": {}}' }, 400],
  ['a number in quotes', { body: update('5') }, 400],
  ['a fraction', { body: update(5.5) }, 400],
  ['a number below 0', { body: update(-5) }, 400],
  ['a number that is not exact', { body: '{"update_id": 90071992547409931}' }, 400],
])('refuses %s and stores nothing', async (_, knock, status) => {
  const { path, url, api } = await stage();
  await isSet(api);
  const { method = 'POST', headers = secret(SECRET), body = update(5) } = knock;
  const response = await fetch(new URL(knock.path ?? '/hook', url), { method, headers, body });
  expect(response.status).toBe(status);
  expect(storedUpdates(path)).toBe(0);
});

it('takes what the others lack one thing of', async () => {
  const { path, url, api } = await stage();
  await isSet(api);
  const init = { method: 'POST', headers: secret(SECRET), body: update(5) };
  expect((await fetch(`${url}?again=1`, init)).status).toBe(200);
  expect((await fetch(url, init)).status).toBe(200);
  expect(storedUpdates(path)).toBe(1);
});

it('stops to read a body without a length that becomes too long', async () => {
  const { path, url } = await stage();
  let read = 0;
  const endless = new Readable({
    read() {
      read += 1;
      this.push(Buffer.alloc(64 * 1024, 'x'));
    },
  });
  const sent = fetch(url, {
    method: 'POST',
    headers: secret(SECRET),
    body: Readable.toWeb(endless) as ReadableStream,
    duplex: 'half',
  });
  // The answer may be lost where the other side is still sending: what counts is that it comes to an end.
  const status = await sent.then((response) => response.status).catch(() => 413);
  expect(status).toBe(413);
  expect(read * 64).toBeLessThan(64 * 1024);
  expect(storedUpdates(path)).toBe(0);
});

it('cuts a request off that trickles in', async () => {
  const limits = { headersTimeout: 100, requestTimeout: 200, connectionsCheckingInterval: 20 };
  const { path, url } = await stage({ limits });
  const socket = connect(Number(new URL(url).port), '127.0.0.1').on('error', () => undefined);
  let heard = '';
  socket.setEncoding('utf8').on('data', (text: string) => (heard += text));
  const head = `POST /hook HTTP/1.1\r\nhost: x\r\nx-telegram-bot-api-secret-token: ${SECRET}\r\n`;
  socket.write(`${head}content-length: 1000\r\n\r\n{"update_id"`);
  const drip = setInterval(() => socket.write(' '), 50);
  await once(socket, 'close');
  clearInterval(drip);
  expect(heard).toMatch(/^HTTP\/1\.1 408 /);
  expect(storedUpdates(path)).toBe(0);
});

it('sets the webhook again and again until the service has it, and says why not', async () => {
  const api = await startBotApi();
  const when = (nth: number) => ({ kind: 'calls', nth: [nth] }) as const;
  api.fail({ method: 'setWebhook', when: when(1), answer: { kind: 'error', code: 429, retryAfter: 1 } });
  api.fail({ method: 'setWebhook', when: when(2), answer: { kind: 'html', code: 502 } });
  api.fail({ method: 'setWebhook', when: when(3), answer: { kind: 'drop' }, effect: true });
  const description = 'Bad Request: bad webhook: Failed to resolve host';
  api.fail({ method: 'setWebhook', when: when(4), answer: { kind: 'error', code: 400, description } });
  const warn = vi.fn();
  const { url } = await stage({ api, log: { info: () => undefined, warn, error: () => undefined } });
  await api.awaitCalls({ method: 'setWebhook' }, 5);
  const set = api.calls({ method: 'setWebhook' }).at(-1);
  expect(set?.parameters).toMatchObject({ url, secret_token: SECRET, max_connections: 1 });
  expect(set?.parameters['allowed_updates']).toContain('message');
  expect(warn).toHaveBeenCalledWith(
    expect.objectContaining({ code: 400, reason: description }),
    'webhook not confirmed',
  );
});

it('sets the webhook again that somebody took away', async () => {
  const { service: api, bot: other } = await given();
  await stage({ api });
  await isSet(api);
  await other.deleteWebhook();
  await api.awaitCalls({ method: 'setWebhook', took: true }, 2);
});

it('leaves the webhook where it is when it ends: what is said meanwhile waits', async () => {
  const { api, bot, owner, path } = await stage();
  await isSet(api);
  await bot.close();
  api.say({ from: owner, text: 'note one' });
  expect(api.calls({ method: 'deleteWebhook' })).toEqual([]);
  expect(storedUpdates(path)).toBe(0);
  expect(api.waitingUpdates()).toHaveLength(1);
});

it('takes a webhook away where it polls, and keeps what waits', async () => {
  const { service: api, bot: other, cook } = await given();
  await other.setWebhook('http://127.0.0.1:9/hook');
  api.say({ from: cook, text: 'note one' });
  const path = newPath();
  await runBot({ service: api, owner: cook, path });
  await api.awaitConfirmed();
  await expect.poll(() => recordedTexts(path)).toEqual(['note one']);
});

it('does not take a webhook away for another program that polls', async () => {
  const { service: api, cook } = await given();
  const when = { kind: 'first', count: 2 } as const;
  api.fail({ method: 'getUpdates', when, answer: { kind: 'error', code: 409 } });
  await runBot({ service: api, owner: cook });
  await api.awaitConfirmed();
  expect(api.calls({ method: 'deleteWebhook' })).toEqual([]);
});

it('is ready once the webhook is set, and not while the service can not bring what waits', async () => {
  const { api, bot, owner } = await stage();
  await expect.poll(async () => (await bot.readiness()).ready).toBe(true);
  const fault = api.fail({ method: 'webhook', when: { kind: 'always' }, answer: { kind: 'drop' } });
  api.say({ from: owner, text: 'note one' });
  await expect
    .poll(bot.readiness, { timeout: 10_000 })
    .toMatchObject({ ready: false, waitingUpdates: 1, deliveryFails: true });
  api.heal(fault);
  await expect
    .poll(bot.readiness, { timeout: 10_000 })
    .toMatchObject({ ready: true, waitingUpdates: 0, deliveryFails: false });
});

it('is not ready where the service does not take the webhook', async () => {
  const api = await startBotApi();
  api.fail({ method: 'setWebhook', when: { kind: 'always' }, answer: { kind: 'error', code: 400 } });
  const { bot } = await stage({ api });
  await api.awaitCalls({ method: 'setWebhook' }, 3);
  expect(await bot.readiness()).toMatchObject({ ready: false, secondsSinceCheck: null });
});

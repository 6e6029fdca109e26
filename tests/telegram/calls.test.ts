// What a failed call means: above all whether it may have taken effect.
import { createServer, type Socket } from 'node:net';
import { once } from 'node:events';
import nock from 'nock';
import { afterEach, beforeEach, expect, it, onTestFinished } from 'vitest';
import { newApi, traceOf, type Trouble, troubleOf, waitMs } from '../../src/channels/telegram/calls.ts';
import { freePort, QUICK } from './running.ts';

const ROOT = 'https://service.example';
const TOKEN = '123456:AAsecret-of-the-kitchen-000000';
const PATH = `/bot${TOKEN}/sendMessage`;

beforeEach(() => {
  nock.disableNetConnect();
});
afterEach(() => {
  nock.cleanAll();
  nock.enableNetConnect();
  nock.restore();
  nock.activate();
});

async function failureOf(apiRoot: string, seconds = 5): Promise<unknown> {
  try {
    await newApi({ token: TOKEN, apiRoot }, seconds).sendMessage(1, 'ribeye is 7.40 now');
  } catch (error) {
    return error;
  }
  throw new Error('the call went well');
}

const refusal = (error_code: number, description: string, parameters?: object): object => ({
  ok: false,
  error_code,
  description,
  ...(parameters === undefined ? {} : { parameters }),
});

it.each<[status: number, body: object, trouble: Trouble]>([
  [429, refusal(429, 'Too Many Requests: retry after 7', { retry_after: 7 }), { is: 'tooMany', seconds: 7 }],
  [429, refusal(429, 'Too Many Requests'), { is: 'tooMany', seconds: 1 }],
  [401, refusal(401, 'Unauthorized'), { is: 'refusedToken' }],
  [404, refusal(404, 'Not Found'), { is: 'refusedToken' }],
  [403, refusal(403, 'Forbidden: bot was blocked by the user'), { is: 'impossible' }],
  [403, refusal(403, 'Forbidden: user is deactivated'), { is: 'impossible' }],
  [400, refusal(400, 'Bad Request: chat not found'), { is: 'impossible' }],
  [400, refusal(400, 'Bad Request: message is too long'), { is: 'impossible' }],
  [409, refusal(409, 'Conflict: terminated by other getUpdates request'), { is: 'impossible' }],
  [500, refusal(500, 'Internal Server Error'), { is: 'unknown' }],
  [502, refusal(502, 'Bad Gateway'), { is: 'unknown' }],
])('reads %i %j', async (status, body, trouble) => {
  nock(ROOT).post(PATH).reply(status, body);
  const error = await failureOf(ROOT);
  expect(troubleOf(error)).toEqual(trouble);
});

it.each([
  ['a page of HTML', 502, '<html><body>Bad Gateway</body></html>'],
  ['a page of HTML that claims to be well', 200, '<html></html>'],
  ['a truncated answer', 200, '{"ok":true,"resu'],
  ['an empty answer', 200, ''],
])('takes it for possible that it was carried out after %s', async (_, status, body) => {
  nock(ROOT).post(PATH).reply(status, body);
  expect(troubleOf(await failureOf(ROOT))).toEqual({ is: 'unknown' });
});

/** Without a network between: real connections, refused or cut by a real server. */
async function cutting(cut: (socket: Socket) => void): Promise<string> {
  nock.restore();
  const server = createServer(cut).listen(await freePort(), '127.0.0.1');
  await once(server, 'listening');
  onTestFinished(() => void server.close());
  const address = server.address();
  return `http://127.0.0.1:${typeof address === 'object' ? (address?.port ?? 0) : 0}`;
}

it.each<[when: string, cut: (socket: Socket) => void]>([
  ['before anything was read', (socket) => void socket.resetAndDestroy()],
  ['after the call was read', (socket) => void socket.once('data', () => socket.resetAndDestroy())],
  [
    'in the middle of the answer',
    (socket) => void socket.once('data', () => socket.end('HTTP/1.1 200 OK\r\ncontent-length: 99\r\n\r\n{')),
  ],
  ['never, with nothing said', (socket) => void socket.on('error', () => undefined)],
])('takes it for possible that it was carried out where the connection is cut %s', async (_, cut) => {
  expect(troubleOf(await failureOf(await cutting(cut), 1))).toEqual({ is: 'unknown' });
});

it.each(['refused', 'of an unknown name'])('knows that a connection %s did nothing', async (why) => {
  nock.restore();
  const root = why === 'refused' ? `http://127.0.0.1:${await freePort()}` : 'http://nowhere.invalid';
  expect(troubleOf(await failureOf(root))).toEqual({ is: 'unreached' });
});

it('waits as long as the service says, else longer with each failure, up to a limit', async () => {
  nock(ROOT)
    .post(PATH)
    .reply(429, refusal(429, 'Too Many Requests', { retry_after: 7 }));
  expect(waitMs(QUICK, await failureOf(ROOT), 1)).toBe(7000);
  nock(ROOT).post(PATH).reply(500, refusal(500, 'Internal Server Error'));
  const error = await failureOf(ROOT);
  expect(waitMs(QUICK, error, 1)).toBeLessThanOrEqual(QUICK.firstBackoffMs);
  expect(waitMs(QUICK, error, 50)).toBeLessThanOrEqual(QUICK.longestBackoffMs);
  expect(waitMs(QUICK, error, 50)).toBeGreaterThanOrEqual(QUICK.longestBackoffMs / 2);
});

it('keeps token and words out of what is logged of a failure', async () => {
  nock(ROOT).post(PATH).reply(400, refusal(400, 'Bad Request: ribeye is 7.40 now'));
  const traces = [traceOf(await failureOf(ROOT))];
  nock.restore();
  traces.push(traceOf(await failureOf(`http://127.0.0.1:${await freePort()}`)));
  expect(traces[0]).toMatchObject({ code: 400, method: 'sendMessage' });
  expect(JSON.stringify(traces)).not.toMatch(/AAsecret|ribeye|7\.40/);
});

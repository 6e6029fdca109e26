// What a collector of figures reads: in its format, of what happened, and of nobody.
import { expect, it, onTestFinished } from 'vitest';
import { newPrometheus } from '../../src/channels/prometheus.ts';
import { measuredStore } from '../../src/app/measured.ts';
import { newAcknowledgements } from '../../src/app/acknowledgements.ts';
import type { Delivery, Letter } from '../../src/app/ports/mailbox.ts';
import { type Timing, UNMEASURED } from '../../src/app/ports/metrics.ts';
import { StoreError } from '../../src/app/ports/store.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import type { SqliteStore } from '../../src/storage/sqlite/store.ts';
import { startBotApi } from './bot-api/start.ts';
import { freePort, newPath, spawnBot, webhookSettings } from './running.ts';

const NAME = '[a-zA-Z_:][a-zA-Z0-9_:]*';
const LABELS = `\\{${NAME}="[^"\\\\\\n]*"(?:,${NAME}="[^"\\\\\\n]*")*\\}`;
/** https://prometheus.io/docs/instrumenting/exposition_formats/, "Text-based format". */
const LINE = new RegExp(
  `^(?:# HELP ${NAME} .*|# TYPE ${NAME} (?:counter|gauge|histogram|summary|untyped)|` +
    `(?<series>${NAME}(?:${LABELS})?) (?<value>[+-]?(?:\\d[\\d.e+-]*|Inf|NaN)))$`,
);

function read(text: string): ReadonlyMap<string, number> {
  const series = new Map<string, number>();
  expect(text.endsWith('\n')).toBe(true);
  for (const line of text.split('\n').filter((each) => each !== '')) {
    const match = LINE.exec(line);
    expect(match, line).not.toBeNull();
    const name = match?.groups?.['series'];
    if (name === undefined) continue;
    expect(series.has(name), line).toBe(false);
    series.set(name, Number(match?.groups?.['value']));
  }
  return series;
}

it.each(['polling', 'a webhook'])('tells by %s what happened, and of nobody', async (way) => {
  const api = await startBotApi();
  onTestFinished(() => api.close());
  const { id: owner } = api.addUser({ first_name: 'Ines' });
  const { id: stranger } = api.addUser({ first_name: 'Tobin' });
  const hook = way === 'polling' ? { PORT: String(await freePort()) } : await webhookSettings();
  const bot = spawnBot({
    DATABASE_URL: `sqlite:${newPath()}`,
    TELEGRAM_BOT_TOKEN: api.token,
    TELEGRAM_API_ROOT: api.url,
    OWNER_TELEGRAM_ID: String(owner),
    ...hook,
  });
  const refused = { kind: 'calls', nth: [3] } as const;
  api.fail({ method: 'sendMessage', when: refused, answer: { kind: 'error', code: 400 } });
  for (const text of ['ribeye is 7.40 now', 'trim is worth 1.50', 'striploin is 8.10 now']) {
    api.say({ from: owner, text });
    await api.awaitCalls({ method: 'sendMessage' }, api.calls({ method: 'sendMessage' }).length + 1);
  }
  api.say({ from: stranger, text: 'who is there' });
  await api.awaitCalls({ method: 'sendMessage' }, 4);
  const page = (): Promise<Response> => fetch(`http://127.0.0.1:${hook['PORT'] ?? ''}/metrics`);
  await expect.poll(async () => (await page()).text()).toContain('blockhand_replies_total{end="sent"} 3\n');
  const response = await page();
  expect(response.headers.get('content-type')).toMatch(/^text\/plain; version=0\.0\.4/);
  const text = await response.text();
  const series = read(text);
  const figures = (...names: readonly string[]): readonly unknown[] =>
    names.map((name) => series.get(`blockhand_${name}`));
  expect(figures('updates_received_total', 'updates_ended_total{end="handled"}')).toEqual([4, 4]);
  expect(figures('updates_ended_total{end="parked"}', 'replies_total{end="failed"}')).toEqual([0, 1]);
  expect(figures('turn_seconds_count', 'acknowledgement_seconds_count')).toEqual([3, 3]);
  expect(figures('stranger_updates', 'ready', 'store_commit_failures_total')).toEqual([1, 1, 0]);
  const [polls = 0, brought = 0] = figures('polls_total{end="ok"}', 'webhook_requests_total{end="taken"}');
  expect([Number(polls) > 0, brought]).toEqual(way === 'polling' ? [true, 0] : [false, 4]);
  expect(series.get('blockhand_contact_age_seconds')).toBeLessThan(90);
  expect([...series.keys()].some((name) => name.startsWith('process_'))).toBe(true);
  expect(text).not.toMatch(/ribeye|trim|Ines|Tobin|7\.4|AAtest|a-secret/);
  for (const id of [owner, stranger, api.token.split(':')[0]]) expect(text).not.toContain(String(id));
  expect(await bot.kill('SIGTERM')).toBe(0);
});

it('does not let a level stand that is no longer there to be told', async () => {
  const prometheus = newPrometheus();
  const levels = { ready: false, strangers: 0 };
  const name = 'blockhand_oldest_unsent_seconds';
  const before = await prometheus.page(() => Promise.resolve({ ...levels, oldestUnsent: 40 }));
  expect(read(before.text).get(name)).toBe(40);
  const after = await prometheus.page(() => Promise.resolve(levels));
  expect(read(after.text).has(name)).toBe(false);
});

it('counts what the store could not take', async () => {
  const path = newPath();
  const store = await openSqlite(path);
  onTestFinished(() => store.close());
  const counted: string[] = [];
  const failing: SqliteStore = {
    ...store,
    receive: (): Promise<void> => Promise.reject(new StoreError('full', path)),
  };
  const measured = measuredStore(failing, { ...UNMEASURED, count: (what) => counted.push(what) });
  await expect(
    measured.receive('1', [{ id: 1, chat: 7, body: '{}' }], '2026-03-06T15:00:00Z'),
  ).rejects.toThrow();
  expect(counted).toEqual(['storeFailures']);
});

const delivery = (update: number, ...texts: readonly string[]): Delivery => ({
  bot: '1',
  update,
  end: 'done',
  at: '2026-03-06T15:00:00Z',
  letters: texts.map((text) => ({ chat: 7, kind: 'message', text })),
});
const letter = (seq: number, text: string): Letter => ({ seq, chat: 7, kind: 'message', text });

function watched() {
  const seconds: number[] = [];
  const clock = { ms: 0 };
  const observe = (_: Timing, taken: number): void => void seconds.push(taken);
  return {
    seconds,
    clock,
    acknowledgements: newAcknowledgements({ ...UNMEASURED, observe }, () => clock.ms),
  };
}

it('measures from an update to the first of its replies, though it had to be sent again', () => {
  const { seconds, clock, acknowledgements } = watched();
  acknowledgements.arrived([{ id: 1, chat: 7, body: '{}' }]);
  clock.ms = 1000;
  acknowledgements.answered(delivery(1, 'first piece', 'second piece'));
  acknowledgements.taken(letter(5, 'first piece'));
  acknowledgements.ended(5, 'again');
  clock.ms = 4000;
  acknowledgements.taken(letter(5, 'first piece'));
  acknowledgements.ended(5, 'sent');
  acknowledgements.taken(letter(6, 'second piece'));
  acknowledgements.ended(6, 'sent');
  expect(seconds).toEqual([4]);
});

it('knows a reply behind a notice, and takes none that waited from before for it', () => {
  const { seconds, clock, acknowledgements } = watched();
  acknowledgements.arrived([{ id: 1, chat: 7, body: '{}' }]);
  acknowledgements.answered(delivery(1, 'trim 1.1 lb'));
  acknowledgements.taken(letter(4, 'an older one'));
  acknowledgements.ended(4, 'sent');
  clock.ms = 2000;
  acknowledgements.taken(letter(5, '(a notice)\ntrim 1.1 lb'));
  acknowledgements.ended(5, 'sent');
  expect(seconds).toEqual([2]);
});

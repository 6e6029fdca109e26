// The bot against a chat service in a process of its own: updates handled per second, and the time from an update to its
// acknowledgement, which is a sign under the entry or the message that answers it.
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { openTable } from '../../src/app/turn.ts';
import { startBot } from '../../src/channels/telegram/bot.ts';
import type { Table } from '../../src/app/ports/table.ts';
import { readTeamWish } from '../../src/language/team-words.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import type { SqliteStore } from '../../src/storage/sqlite/store.ts';
import { type RemoteBotApi, spawnBotApi } from '../telegram/bot-api/remote.ts';
import { SETTINGS, voice } from './kitchen.ts';
import { median, percentile, round } from './measure.ts';

const LINES = [
  'ribeye 14.2 lb at 7.40',
  'trim 1.1',
  'fat 1.9',
  '12 portions 16 oz',
  'portions weigh 11.2',
  'took 25 minutes',
  'done',
];
const MANY = 3000;
const PACED = 1000;
const PER_SECOND = 50;
const FLOOD = 2000;
const MEANWHILE_MS = 100;

interface Stage {
  readonly api: RemoteBotApi;
  readonly store: SqliteStore;
  readonly people: readonly number[];
  readonly start: () => Promise<void>;
  readonly close: () => Promise<void>;
}

interface Times {
  readonly medianMs: number;
  readonly p99Ms: number;
}

export async function measureTelegram(folder: string) {
  const at = (name: string): string => join(folder, `${name}.db`);
  return {
    updatesPerSecond: await throughput(await stage(at('many'), 20)),
    atFiftyPerSecond: await paced(await stage(at('paced'), 10)),
    hundredChats: await paced(await stage(at('hundred'), 100)),
    hundredChatsUpdatesPerSecond: await throughput(await stage(at('many-hundred'), 100)),
    besideAFlood: await besideFlood(await stage(at('flood'), 2)),
  };
}

/** A kitchen for each person, so that each has tests of their own. */
async function stage(path: string, chats: number): Promise<Stage> {
  const api = await spawnBotApi({}, join('tests', 'telegram', 'bot-api', 'main.ts'));
  const store = await openSqlite(path);
  const tables = new Map<string, Table>();
  const people: number[] = [];
  for (let index = 0; index < chats; index += 1) {
    const [kitchen, name] = [`kitchen-${index}`, `Cook ${index}`];
    const { id } = await api.addUser({ first_name: name });
    await store.create(kitchen, SETTINGS);
    await store.appoint(kitchen, { person: id, name, role: 'owner' });
    tables.set(kitchen, await openTable({ store, id: kitchen, ...voice }));
    people.push(id);
  }
  let stop = (): Promise<void> => Promise.resolve();
  return {
    ...{ api, store, people },
    start: async () => {
      stop = await running(api, store, tables);
    },
    close: async () => {
      await stop();
      await store.close();
      await api.close();
    },
  };
}

async function running(
  api: RemoteBotApi,
  store: SqliteStore,
  tables: ReadonlyMap<string, Table>,
): Promise<() => Promise<void>> {
  const bot = await startBot({
    service: { token: api.token, apiRoot: api.url },
    ...{ tables, ears: new Map(), post: store },
    words: (reply) => voice.render([reply], { ...SETTINGS, seesCosts: true }),
    readTeamWish: (line) => readTeamWish(voice.language.team, line),
    onClaim: () => undefined,
    log: { info: () => undefined, warn: () => undefined, error: () => undefined },
  });
  return async () => {
    bot.stop();
    await bot.ended;
  };
}

/** The times of the messages are those of a calm day: nobody is cut short for haste. */
async function say({ api, people }: Stage, index: number, from = people[index % people.length] ?? 0) {
  const turn = Math.floor(index / people.length) % LINES.length;
  const date = Math.floor(Date.now() / 1000) + index * 2;
  const begun = Date.now();
  const { message } = await api.say({ from, text: LINES[turn] ?? '', extra: { date } });
  return { chat: from, message: message.message_id, begun };
}

type Spoken = Awaited<ReturnType<typeof say>>;

async function settled({ api, store }: Stage): Promise<void> {
  await api.awaitConfirmed();
  for (;;) {
    const { oldestUpdateAt, oldestLetterAt } = await store.backlog(api.token.split(':')[0] ?? '');
    if (oldestUpdateAt === undefined && oldestLetterAt === undefined) return;
    await wait(20);
  }
}

/** From the start of a bot for which all of it waits, to the last answer. */
async function throughput(at: Stage): Promise<number> {
  for (let index = 0; index < MANY; index += 1) await say(at, index);
  const begun = Date.now();
  await at.start();
  await settled(at);
  const seconds = (Date.now() - begun) / 1000;
  await at.close();
  return round(MANY / seconds);
}

async function paced(at: Stage): Promise<Times> {
  await at.start();
  const begun = Date.now();
  const saying: Promise<Spoken>[] = [];
  for (let index = 0; index < PACED; index += 1) {
    await wait(Math.max(0, begun + (index * 1000) / PER_SECOND - Date.now()));
    saying.push(say(at, index));
  }
  const spoken = await Promise.all(saying);
  await settled(at);
  const times = await timesOf(at.api, spoken);
  await at.close();
  return times;
}

/** One chat has said very much at once; another kitchen talks meanwhile. */
async function besideFlood(at: Stage): Promise<Times> {
  const [loud = 0, calm = 0] = at.people;
  for (let index = 0; index < FLOOD; index += 1) await say(at, index * 2, loud);
  await at.start();
  const spoken: Spoken[] = [];
  for (let index = 0; (await at.api.countEffects({ chat: loud })) < FLOOD; index += 1) {
    spoken.push(await say(at, index * 2, calm));
    await wait(MEANWHILE_MS);
  }
  await settled(at);
  const times = await timesOf(at.api, spoken);
  await at.close();
  return times;
}

async function timesOf(api: RemoteBotApi, spoken: readonly Spoken[]): Promise<Times> {
  const signs = new Map<string, number>();
  for (const { chat, parameters, atMs } of await api.effects({ method: 'setMessageReaction' }))
    signs.set(`${chat ?? 0} ${String(parameters['message_id'])}`, atMs);
  const messages = await api.effects({ method: 'sendMessage' });
  const times = spoken.map(({ chat, message, begun }) => {
    const sign = signs.get(`${chat} ${message}`);
    const answered = sign ?? messages.find((each) => each.chat === chat && each.atMs >= begun)?.atMs;
    if (answered === undefined) throw new Error(`message ${message} of ${chat} was not acknowledged`);
    return answered - begun;
  });
  return { medianMs: median(times), p99Ms: percentile(times, 0.99) };
}

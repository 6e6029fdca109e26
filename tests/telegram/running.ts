// The bot of a test: in this process on a database of its own, or started as a person starts it.
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { onTestFinished } from 'vitest';
import type { Log } from '../../src/app/ports/log.ts';
import type { Metrics } from '../../src/app/ports/metrics.ts';
import type { KeepRecording } from '../../src/app/ports/recordings.ts';
import type { SpeakNote } from '../../src/app/ports/speech.ts';
import type { HearNote } from '../../src/app/ports/hearing.ts';
import type { PaperMaker } from '../../src/app/ports/paper.ts';
import type { Table } from '../../src/app/ports/table.ts';
import { openTable } from '../../src/app/turn.ts';
import { loadVoice } from '../../src/app/voice.ts';
import { type Bot, startBot } from '../../src/channels/telegram/bot.ts';
import type { Pace } from '../../src/channels/telegram/pace.ts';
import type { Webhook } from '../../src/channels/telegram/webhook.ts';
import type { Reply } from '../../src/core/reply.ts';
import { readTeamWish } from '../../src/language/team-words.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import type { SqliteStore } from '../../src/storage/sqlite/store.ts';
import { SETTINGS } from '../app/ports/store/samples.ts';
import { scratchFolder } from '../storage/scratch.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

export const voice = loadVoice(join(ROOT, 'intents'), 'en');
export const words = (reply: Reply): string => voice.render([reply], { ...SETTINGS, seesCosts: true });

export const QUICK: Pace = {
  pollSeconds: 1,
  callSeconds: 1,
  firstBackoffMs: 10,
  longestBackoffMs: 100,
  checkMs: 50,
  hearingMs: 30,
  signMs: 40,
  slowMs: 250,
};

const QUIET: Log = { info: () => undefined, warn: () => undefined, error: () => undefined };

interface Given {
  readonly service: { readonly url: string; readonly token: string };
  readonly owner?: number;
  /** The first is that of the owner. */
  readonly kitchens?: readonly string[];
  readonly store?: SqliteStore;
  readonly path?: string;
  readonly log?: Log;
  readonly metrics?: Metrics;
  readonly webhook?: Webhook;
  readonly pace?: Pace;
  readonly papers?: PaperMaker;
  readonly ears?: ReadonlyMap<string, HearNote>;
  readonly speak?: SpeakNote;
  readonly keep?: KeepRecording;
}

export interface Running extends Bot {
  readonly store: SqliteStore;
  readonly claims: readonly string[];
  /** Stops it and closes its database. */
  readonly close: () => Promise<void>;
}

export const newPath = (): string => join(scratchFolder(), 'kitchen.db');

/** Stops at the end of the test. */
export async function runBot({
  service,
  owner,
  path = newPath(),
  log = QUIET,
  kitchens = ['kitchen'],
  pace = QUICK,
  ...given
}: Given): Promise<Running> {
  const store = given.store ?? (await openSqlite(path));
  const known = await store.kitchens();
  for (const id of kitchens) if (!known.includes(id)) await store.create(id, SETTINGS);
  const tables = new Map<string, Table>();
  for (const id of kitchens)
    tables.set(
      id,
      await openTable({
        store,
        id,
        ...voice,
        ...(given.papers === undefined ? {} : { papers: given.papers }),
      }),
    );
  const claims: string[] = [];
  const bot = await startBot({
    service: { token: service.token, apiRoot: service.url },
    ...(owner === undefined ? {} : { owner: { person: owner, kitchen: 'kitchen' } }),
    ...{ tables, ears: given.ears ?? new Map(), post: store, words, log, pace },
    readTeamWish: (line) => readTeamWish(voice.language.team, line),
    onClaim: (code) => claims.push(code),
    ...(given.speak === undefined ? {} : { speak: given.speak }),
    ...(given.keep === undefined ? {} : { keep: given.keep }),
    ...(given.webhook === undefined ? {} : { webhook: given.webhook }),
    ...(given.metrics === undefined ? {} : { metrics: given.metrics }),
  });
  let isOpen = true;
  const close = async (): Promise<void> => {
    if (!isOpen) return;
    isOpen = false;
    bot.stop();
    await bot.ended;
    await store.close();
  };
  onTestFinished(close);
  return { ...bot, store, claims, close };
}

/** It was free a moment ago. */
export async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  server.close();
  await once(server, 'close');
  return typeof address === 'object' && address !== null ? address.port : 0;
}

/** What a bot is told in its environment to be brought its updates. */
export async function webhookSettings(): Promise<Readonly<Record<string, string>>> {
  const port = String(await freePort());
  return {
    PORT: port,
    TELEGRAM_WEBHOOK_URL: `http://127.0.0.1:${port}/hook`,
    TELEGRAM_WEBHOOK_SECRET: 'a-secret-of-the-kitchen',
  };
}

export interface Process {
  readonly child: ChildProcess;
  readonly output: () => string;
  readonly kill: (signal: NodeJS.Signals) => Promise<number | null>;
}

/** The bot as a process, told by its environment. */
export function spawnBot(environment: Readonly<Record<string, string>>): Process {
  const child = spawn(process.execPath, [join(ROOT, 'src/launch.js')], {
    cwd: ROOT,
    env: { ...process.env, KITCHEN_TIMEZONE: 'UTC', ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let output = '';
  for (const stream of [child.stdout, child.stderr])
    stream.setEncoding('utf8').on('data', (text: string) => (output += text));
  const closed = once(child, 'close') as Promise<[number | null]>;
  onTestFinished(() => void child.kill('SIGKILL'));
  return {
    child,
    output: () => output,
    kill: async (signal) => {
      child.kill(signal);
      return (await closed)[0];
    },
  };
}

/** The words of all messages whose facts are in the log, in its order. */
export function recordedTexts(path: string): readonly string[] {
  const db = new Database(path, { readonly: true });
  const texts = db
    .prepare<[], string>(
      'SELECT message.text FROM fact JOIN message ON message.kitchen = fact.kitchen AND message.id = fact.message ORDER BY seq',
    )
    .pluck()
    .all();
  db.close();
  return texts;
}

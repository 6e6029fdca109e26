// Only wiring: which command, which store, which language.
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { judgeWords } from './app/judge-words.ts';
import { measuredStore, measuredTable } from './app/measured.ts';
import { type Metrics, UNMEASURED } from './app/ports/metrics.ts';
import { StoreError } from './app/ports/store.ts';
import { rebuild } from './app/rebuild.ts';
import { startScanner } from './app/scanner.ts';
import { scratchOpener } from './app/scratch.ts';
import { openTable } from './app/turn.ts';
import { loadVoice, plainListener, type Voice } from './app/voice.ts';
import { PlaceError } from './channels/listen.ts';
import { chat, fileKeeper } from './channels/terminal.ts';
import { type Config, ConfigError, readConfig } from './config.ts';
import { instantOf } from './core/local-time.ts';
import { name, say, type Reply } from './core/reply.ts';
import { openTests, type Settings } from './core/kitchen.ts';
import { readTeamWish } from './language/team-words.ts';
import { paperMaker } from './papers/maker.ts';
import { openSqlite } from './storage/sqlite/open.ts';

const INTENTS = join(fileURLToPath(new URL('.', import.meta.url)), '..', 'intents');
const KITCHEN = 'kitchen';

const out = (text: string): void => void process.stdout.write(`${text}\n`);
const err = (text: string): void => void process.stderr.write(`${text}\n`);

async function main([command, ...args]: readonly string[]): Promise<number> {
  const config = readConfig();
  const voice = loadVoice(INTENTS, config.kitchen.language);
  const settings: Settings = { ...config.kitchen, laborAvoidable: true };
  const words = (...replies: readonly Reply[]): string =>
    voice.render(replies, { ...settings, seesCosts: true });
  const open = scratchOpener(() => openSqlite(':memory:'), voice);
  try {
    switch (command) {
      case undefined:
        return config.telegram === undefined
          ? await startChat(config, { voice, settings, words })
          : await startTelegram(config, config.telegram, { voice, settings, words });
      case 'parse': {
        const { parseCommand } = await import('./channels/replay/utterances.ts');
        const judge = ({ unit, now }: { unit: 'lb' | 'kg'; now?: string }) => {
          const kitchen = { ...settings, unit };
          const listener = plainListener(voice.language, kitchen);
          const at = (now && instantOf(now, kitchen.timezone)) ?? new Date().toISOString();
          return (line: string) => judgeWords(voice, listener, { settings: kitchen, line, at });
        };
        return await parseCommand(args, { judge, open, input: process.stdin, out, err });
      }
      case 'replay': {
        const { replay } = await import('./channels/replay/command.ts');
        return await replay(args, open, { out, err });
      }
      case 'rebuild': {
        const store = await openSqlite(config.databasePath);
        const ids = await store.kitchens();
        if (ids.length === 0) out(words(say('rebuilt-same', { facts: 0 })));
        for (const id of ids) {
          const { facts, differed } = await rebuild(store, id);
          out(words(say(differed ? 'rebuilt-changed' : 'rebuilt-same', { facts })));
        }
        await store.close();
        return 0;
      }
      case 'backup': {
        const { backupSqlite } = await import('./storage/sqlite/backup.ts');
        const [file] = args;
        if (file === undefined) {
          err('backup FILE');
          return 2;
        }
        await backupSqlite(config.databasePath, file);
        out(words(say('backed-up', { place: file })));
        return 0;
      }
      default:
        err(`no command "${command}": parse, replay, rebuild, backup, or none for the chat`);
        return 2;
    }
  } catch (error) {
    if (error instanceof PlaceError) {
      const { host, port } = error.place;
      err(words(say(`port-${error.fault}`, { host: name(host), port: name(String(port)) })));
      return 2;
    }
    if (!(error instanceof StoreError)) throw error;
    err(words(say(`store-${error.fault}`, { place: error.place })));
    return 1;
  }
}

interface ChatParts {
  readonly voice: Voice;
  readonly settings: Settings;
  readonly words: (...replies: readonly Reply[]) => string;
}

async function openKitchen(
  config: Config,
  { voice, settings }: Pick<ChatParts, 'voice' | 'settings'>,
  metrics: Metrics = UNMEASURED,
) {
  const store = measuredStore(await openSqlite(config.databasePath), metrics);
  const isNew = !(await store.kitchens()).includes(KITCHEN);
  if (isNew) await store.create(KITCHEN, { ...settings, openedAt: new Date().toISOString() });
  const table = measuredTable(await openTable({ store, id: KITCHEN, papers: paperMaker, ...voice }), metrics);
  return { store, table, isNew };
}

/** How long what is on its way may take when the program is told to end. */
const LAST_MS = 8000;

async function startTelegram(
  config: Config,
  { owner, webhook, ...service }: NonNullable<Config['telegram']>,
  { voice, settings, words }: ChatParts,
): Promise<number> {
  const { startBot } = await import('./channels/telegram/bot.ts');
  const { newLog } = await import('./log.ts');
  const { health } = await import('./channels/health.ts');
  const { listen } = await import('./channels/listen.ts');
  const { newPrometheus } = await import('./channels/prometheus.ts');
  const metrics = newPrometheus();
  const log = newLog(config.logLevel);
  const { store, table, isNew } = await openKitchen(config, { voice, settings }, metrics);
  const server = config.server && (await listen(config.server));
  if (isNew && config.zoneAssumed) out(words(say('zone-assumed', { timezone: name(settings.timezone) })));
  const bot = await startBot({
    service,
    ...(owner === undefined ? {} : { owner: { person: owner, kitchen: KITCHEN } }),
    ...(webhook === undefined ? {} : { webhook }),
    ...{ tables: new Map([[KITCHEN, table]]), post: store, words, metrics, log },
    readTeamWish: (line) => readTeamWish(voice.language.team, line),
    onClaim: (code) => {
      out(words(say('telegram-claim', { code: name(code) })));
    },
  });
  const scanner = startScanner({
    ...{ table, post: bot.post(KITCHEN) },
    onTold: ({ alarm, dueAt }) => {
      log.info({ alarm: String(alarm), dueAt }, 'due told');
    },
    onTrouble: (error) => {
      log.error({ fault: error instanceof StoreError ? error.fault : 'bug' }, 'due not told');
    },
  });
  const { readiness, levels, take } = bot;
  server?.serve(
    health({
      readiness,
      metrics: () => metrics.page(levels),
      ...(take === undefined ? {} : { otherwise: take }),
    }),
  );
  const stop = (): void => {
    bot.stop();
    server?.close();
    // What is still on its way is marked so in the store, and told of at the next start.
    setTimeout(() => process.exit(0), LAST_MS).unref();
  };
  process.once('SIGTERM', stop).once('SIGINT', stop);
  const ended = await bot.ended;
  await scanner.stop();
  server?.close();
  server?.cut();
  await store.close();
  if (ended === 'refused') err(words(say('telegram-refused')));
  return ended === 'refused' ? 1 : 0;
}

async function startChat(config: Config, { voice, settings, words }: ChatParts): Promise<number> {
  const { store, table, isNew } = await openKitchen(config, { voice, settings });
  const open = openTests(table.kitchen()).map((test) => test.item);
  const greeting = [
    say('welcome'),
    ...(open.length === 0 ? [] : [say('welcome-open', { items: open.join(', ') })]),
    ...(isNew && config.zoneAssumed ? [say('zone-assumed', { timezone: name(settings.timezone) })] : []),
  ];
  const trouble = (error: unknown): string =>
    error instanceof StoreError
      ? words(say(`store-${error.fault}`, { place: error.place }))
      : words(say('trouble'));
  const scanner = startScanner({
    table,
    onTold: (told) => {
      out(told.words('owner'));
    },
    onTrouble: (error) => {
      out(trouble(error));
    },
  });
  await chat({
    table,
    input: process.stdin,
    output: process.stdout,
    greeting: words(...greeting),
    notForMe: words(say('not-for-me')),
    trouble,
    keep: fileKeeper(join(dirname(config.databasePath), 'exports'), (became, what) =>
      words(say(`file-${became}`, { what: name(what) })),
    ),
  });
  await scanner.stop();
  await store.close();
  return 0;
}

try {
  process.exitCode = await main(process.argv.slice(2));
} catch (error) {
  if (!(error instanceof ConfigError)) throw error;
  err(error.message);
  process.exitCode = 2;
}

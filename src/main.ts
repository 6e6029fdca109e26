// Only wiring: which command, which store, which language.
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { judgeWords } from './app/judge-words.ts';
import { measuredStore, measuredTable } from './app/measured.ts';
import { type Metrics, UNMEASURED } from './app/ports/metrics.ts';
import type { HeardAs } from './app/ports/table.ts';
import { StoreError } from './app/ports/store.ts';
import { rebuild } from './app/rebuild.ts';
import { scratchOpener } from './app/scratch.ts';
import { openTable } from './app/turn.ts';
import { loadVoice, plainListener, type Voice } from './app/voice.ts';
import { PlaceError } from './channels/listen.ts';
import { chat } from './channels/terminal.ts';
import { type Config, ConfigError, readConfig } from './config.ts';
import { hearFiles, openSpeaker, speakText } from './open-speech.ts';
import { name, say, type Reply } from './core/reply.ts';
import { openTests, type Settings } from './core/kitchen.ts';
import { readTeamWish } from './language/team-words.ts';
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
        const judge = ({ unit }: { unit: 'lb' | 'kg' }) => {
          const kitchen = { ...settings, unit };
          const listener = plainListener(voice.language, kitchen);
          return (line: string, heard?: HeardAs) =>
            judgeWords(voice, listener, { settings: kitchen, line, heard });
        };
        return await parseCommand(args, { judge, open, input: process.stdin, out, err });
      }
      case 'replay': {
        const { replay } = await import('./channels/replay/command.ts');
        return await replay(args, open, { out, err });
      }
      case 'hear':
        return await hearFiles(args, config, { intents: INTENTS, voice, settings, open, words, out, err });
      case 'speak':
        return await speakText(args, openSpeaker(INTENTS, config.kitchen.language), { words, err });
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
        err(`no command "${command}": parse, replay, hear, speak, rebuild, backup, or none for the chat`);
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
  if (isNew) await store.create(KITCHEN, settings);
  const table = measuredTable(await openTable({ store, id: KITCHEN, ...voice }), metrics);
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
  const { store, table, isNew } = await openKitchen(config, { voice, settings }, metrics);
  const server = config.server && (await listen(config.server));
  if (isNew && config.zoneAssumed) out(words(say('zone-assumed', { timezone: name(settings.timezone) })));
  const bot = await startBot({
    service,
    ...(owner === undefined ? {} : { owner: { person: owner, kitchen: KITCHEN } }),
    ...(webhook === undefined ? {} : { webhook }),
    ...{ tables: new Map([[KITCHEN, table]]), post: store, words, metrics, log: newLog(config.logLevel) },
    readTeamWish: (line) => readTeamWish(voice.language.team, line),
    onClaim: (code) => {
      out(words(say('telegram-claim', { code: name(code) })));
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
  await chat({
    table,
    input: process.stdin,
    output: process.stdout,
    greeting: words(...greeting),
    notForMe: words(say('not-for-me')),
    trouble,
  });
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

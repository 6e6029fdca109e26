// Only wiring, as in main.ts: the bot in Telegram, with its server, its metrics, its ear and what falls due.
import { dirname, join } from 'node:path';
import { hearerAt } from './app/hear.ts';
import type { HearNote } from './app/ports/hearing.ts';
import { type KitchenId, StoreError } from './app/ports/store.ts';
import { startScanner } from './app/scanner.ts';
import type { Config } from './config.ts';
import { name, say } from './core/reply.ts';
import { readTeamWish } from './language/team-words.ts';
import { FIRST_KITCHEN, openKitchens, type Wiring } from './open-kitchens.ts';
import { openHearer, openSpeaker } from './open-speech.ts';
import { recordingsIn } from './storage/recordings.ts';

/** How long what is on its way may take when the program is told to end. */
const LAST_MS = 8000;
/** How often it is looked which recordings are due to be deleted. */
const SWEEP_MS = 60_000;

export async function startTelegram(
  config: Config,
  { owner, webhook, ...service }: NonNullable<Config['telegram']>,
  { intents, ...wiring }: Wiring & { readonly intents: string },
): Promise<number> {
  const { startBot } = await import('./channels/telegram/bot.ts');
  const { newLog } = await import('./log.ts');
  const { health } = await import('./channels/health.ts');
  const { listen } = await import('./channels/listen.ts');
  const { newPrometheus } = await import('./channels/prometheus.ts');
  const { voice, settings, words, out, err } = wiring;
  const metrics = newPrometheus();
  const log = newLog(config.logLevel);
  const hearer = await openHearer(config, { intents, voice });
  const hears = config.speech.engine === 'none' ? {} : { hears: hearer.recogniser.name };
  const { store, tables, isNew } = await openKitchens(config, { ...wiring, ...hears }, metrics);
  const recordings = recordingsIn({
    folder: join(dirname(config.databasePath), 'recordings'),
    kitchens: [...tables.keys()],
    daysOf: (kitchen) => tables.get(kitchen)?.kitchen().settings.keepsRecordings,
  });
  const ears = new Map<KitchenId, HearNote>([...tables].map(([id, table]) => [id, hearerAt(hearer, table)]));
  const server = config.server && (await listen(config.server));
  if (isNew && config.zoneAssumed) out(words(say('zone-assumed', { timezone: name(settings.timezone) })));
  const bot = await startBot({
    service,
    ...(owner === undefined ? {} : { owner: { person: owner, kitchen: FIRST_KITCHEN } }),
    ...(webhook === undefined ? {} : { webhook }),
    ...{ tables, ears, post: store, words, metrics, log },
    speak: openSpeaker(intents, config.kitchen.language),
    keep: recordings.keep,
    readTeamWish: (line) => readTeamWish(voice.language.team, line),
    onClaim: (code, kitchen) => {
      out(words(say('telegram-claim', { code: name(code), kitchen: name(kitchen) })));
    },
  });
  const scanners = [...tables].map(([id, table]) =>
    startScanner({
      ...{ table, post: bot.post(id) },
      onTold: ({ alarm, dueAt }) => {
        log.info({ alarm: String(alarm), dueAt }, 'due told');
      },
      onTrouble: (error) => {
        log.error({ fault: error instanceof StoreError ? error.fault : 'bug' }, 'due not told');
      },
    }),
  );
  const sweep = (): void => {
    recordings.sweep(Date.now()).catch((error: unknown) => {
      log.error({ error: error instanceof Error ? error.name : typeof error }, 'recordings not swept');
    });
  };
  sweep();
  setInterval(sweep, SWEEP_MS).unref();
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
  await Promise.all(scanners.map((scanner) => scanner.stop()));
  await hearer.recogniser.close();
  server?.close();
  server?.cut();
  await store.close();
  if (ended === 'refused') err(words(say('telegram-refused')));
  return ended === 'refused' ? 1 : 0;
}

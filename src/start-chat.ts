// Only wiring, as in main.ts: the chat in the terminal.
import { dirname, join } from 'node:path';
import { StoreError } from './app/ports/store.ts';
import { startScanner } from './app/scanner.ts';
import { chat, fileKeeper } from './channels/terminal.ts';
import type { Config } from './config.ts';
import { openTests } from './core/kitchen.ts';
import { name, say } from './core/reply.ts';
import { openKitchens, type Wiring } from './open-kitchens.ts';

export async function startChat(config: Config, wiring: Wiring): Promise<number> {
  const { settings, words, out } = wiring;
  const { store, first: table, isNew } = await openKitchens(config, wiring);
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

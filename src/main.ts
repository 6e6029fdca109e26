// Only wiring: which command, which store, which language.
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { judgeWords } from './app/judge-words.ts';
import type { HeardAs } from './app/ports/table.ts';
import { StoreError } from './app/ports/store.ts';
import { rebuild } from './app/rebuild.ts';
import { scratchOpener } from './app/scratch.ts';
import { loadVoice, plainListener } from './app/voice.ts';
import { PlaceError } from './channels/listen.ts';
import { ConfigError, readConfig } from './config.ts';
import { instantOf } from './core/local-time.ts';
import { hearFiles, openSpeaker, speakText } from './open-speech.ts';
import { name, say, type Reply } from './core/reply.ts';
import type { Settings } from './core/kitchen.ts';
import { madeKitchen, type Wiring } from './open-kitchens.ts';
import { startChat } from './start-chat.ts';
import { startTelegram } from './start-telegram.ts';
import { openSqlite } from './storage/sqlite/open.ts';

const INTENTS = join(fileURLToPath(new URL('.', import.meta.url)), '..', 'intents');

const out = (text: string): void => void process.stdout.write(`${text}\n`);
const err = (text: string): void => void process.stderr.write(`${text}\n`);

async function main([command, ...args]: readonly string[]): Promise<number> {
  const config = readConfig();
  const voice = loadVoice(INTENTS, config.kitchen.language);
  const settings: Settings = { ...config.kitchen, laborAvoidable: true };
  const words = (...replies: readonly Reply[]): string =>
    voice.render(replies, { ...settings, seesCosts: true });
  const wiring: Wiring = { voice, settings, words, out, err };
  const open = scratchOpener(() => openSqlite(':memory:'), voice);
  try {
    switch (command) {
      case undefined:
        if (config.telegram === undefined) return await startChat(config, wiring);
        return await startTelegram(config, config.telegram, { ...wiring, intents: INTENTS });
      case 'parse': {
        const { parseCommand } = await import('./channels/replay/utterances.ts');
        const judge = ({ unit, now }: { unit: 'lb' | 'kg'; now?: string }) => {
          const kitchen = { ...settings, unit };
          const listener = plainListener(voice.language, kitchen);
          const at = (now && instantOf(now, kitchen.timezone)) ?? new Date().toISOString();
          return (line: string, heard?: HeardAs) =>
            judgeWords(voice, listener, { settings: kitchen, line, at, heard });
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
      case 'kitchen': {
        const [id] = args;
        if (id === undefined || !/^[a-z][a-z0-9-]{0,30}$/.test(id)) {
          err(words(say('kitchen-usage')));
          return 2;
        }
        const store = await openSqlite(config.databasePath);
        const isMade = await madeKitchen(store, id, settings);
        await store.close();
        out(words(say(isMade ? 'kitchen-made' : 'kitchen-there', { kitchen: name(id) })));
        return isMade ? 0 : 1;
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
        err(
          `no command "${command}": parse, replay, hear, speak, kitchen, rebuild, backup, or none for the chat`,
        );
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

try {
  process.exitCode = await main(process.argv.slice(2));
} catch (error) {
  if (!(error instanceof ConfigError)) throw error;
  err(error.message);
  process.exitCode = 2;
}

// Only wiring, as in main.ts: which engine hears and which speaks. Each is loaded when it is wanted.
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Hearer, hearerAt, plainHearer } from './app/hear.ts';
import { judgeWords } from './app/judge-words.ts';
import type { OpenScratch } from './app/ports/scratch.ts';
import type { Recogniser, SpeakNote } from './app/ports/speech.ts';
import { plainListener, type Voice } from './app/voice.ts';
import type { Config } from './config.ts';
import type { Settings } from './core/kitchen.ts';
import { type Reply, say } from './core/reply.ts';
import { loadEar } from './language/ear/ear.ts';
import { loadSpeaking, spoken } from './language/spoken.ts';

/** The engine that is set, ready to hear; it starts with the first note. `intents` is the folder of all languages. */
export async function openHearer(
  { kitchen, speech }: Pick<Config, 'kitchen' | 'speech'>,
  { intents, voice }: { intents: string; voice: Voice },
): Promise<Hearer> {
  const { decodeNote: decode } = await import('./speech/sound/decode.ts');
  const recogniser = await openRecogniser(speech, kitchen.language);
  return { voice, ear: loadEar(intents, kitchen.language), decode, recogniser };
}

async function openRecogniser(speech: Config['speech'], language: string): Promise<Recogniser> {
  switch (speech.engine) {
    case 'embedded':
      return (await import('./speech/embedded/engine.ts')).embedded(workerFile('embedded'));
    case 'local':
      return (await import('./speech/local.ts')).localRecogniser(speech.folder, language);
    case 'http':
      return (await import('./speech/http/engine.ts')).httpRecogniser({ url: speech.url, language });
    case 'none':
      return (await import('./speech/none.ts')).none;
  }
}

/** Loaded with the first text. One text after the other: the voice takes much memory. */
export function openSpeaker(intents: string, language: string): SpeakNote {
  const speaking = loadSpeaking(intents, language);
  let last: Promise<unknown> = Promise.resolve();
  const speak: SpeakNote = async (text) => {
    const { spokenWav } = await import('./speech/flite/voice.ts');
    const { decodeNote } = await import('./speech/sound/decode.ts');
    const { encodeNote } = await import('./speech/sound/encode.ts');
    return encodeNote(await decodeNote(await spokenWav(workerFile('flite'), spoken(speaking, text))));
  };
  return (text) => {
    const said = last.then(() => speak(text));
    last = said.catch(() => undefined);
    return said;
  };
}

/** Threads are started from their sources, wherever the bundle lies. */
const workerFile = (engine: string): string =>
  join(fileURLToPath(new URL('.', import.meta.url)), '..', 'src', 'speech', engine, 'worker.js');

interface Commanded {
  readonly words: (reply: Reply) => string;
  readonly err: (text: string) => void;
}

interface Hearing extends Commanded {
  readonly intents: string;
  readonly voice: Voice;
  readonly settings: Settings;
  readonly open: OpenScratch;
  readonly out: (text: string) => void;
}

/** The command `hear`. */
export async function hearFiles(
  args: readonly string[],
  config: Config,
  { intents, voice, settings, ...given }: Hearing,
): Promise<number> {
  const { hearCommand } = await import('./channels/replay/hear.ts');
  const hearer = await openHearer(config, { intents, voice });
  const listener = plainListener(voice.language, settings);
  const status = await hearCommand(args, {
    ...given,
    judge: (line, heard) =>
      judgeWords(voice, listener, { settings, line, heard, at: new Date().toISOString() }),
    earOf: (table) => (table === undefined ? plainHearer(hearer) : hearerAt(hearer, table)),
  });
  await hearer.recogniser.close();
  return status;
}

/** The command `speak`. */
export async function speakText(
  args: readonly string[],
  speak: SpeakNote,
  { words, err }: Commanded,
): Promise<number> {
  const { speakCommand } = await import('./channels/speak.ts');
  return await speakCommand(args, { speak, err, trouble: (fault) => words(say(`unspoken-${fault}`)) });
}

// What the tests of speech share: a language with its ear, and sentences said by the voice that comes with the program.
import { join } from 'node:path';
import type { Expected, Sound } from '../../src/app/ports/speech.ts';
import { expectedAt } from '../../src/app/hear.ts';
import { loadVoice, plainListener } from '../../src/app/voice.ts';
import { loadEar } from '../../src/language/ear/ear.ts';
import type { Listening } from '../../src/language/ear/grammar.ts';
import { loadSpeaking, spoken as asSpoken } from '../../src/language/spoken.ts';
import { spokenWav } from '../../src/speech/flite/voice.ts';
import { decodeNote } from '../../src/speech/sound/decode.ts';

export const root = new URL('../..', import.meta.url).pathname;
const intents = join(root, 'intents');

export const voice = loadVoice(intents, 'en');
export const ear = loadEar(intents, 'en');
export const speaking = loadSpeaking(intents, 'en');

export const workerFile = (engine: string): string => join(root, 'src/speech', engine, 'worker.js');

export const NOWHERE: Listening = {
  stage: undefined,
  items: new Set(),
  parts: new Set(),
  onTable: new Set(),
};
export const expected = (listening: Partial<Listening> = {}): Expected =>
  expectedAt(
    {
      listening: { ...NOWHERE, ...listening },
      listener: plainListener(voice.language, { unit: 'lb', currency: 'USD' }),
    },
    ear,
  );

export const wavSaid = (words: string): Promise<Uint8Array> =>
  spokenWav(workerFile('flite'), asSpoken(speaking, words));

export const soundSaid = async (words: string): Promise<Sound> => decodeNote(await wavSaid(words));

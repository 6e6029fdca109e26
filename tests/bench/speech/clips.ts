// Each recording through the path of a voice note, with no kitchen behind it: decoded, heard, read.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { plainHearer } from '../../../src/app/hear.ts';
import { judgeWords } from '../../../src/app/judge-words.ts';
import type { Recogniser } from '../../../src/app/ports/speech.ts';
import { loadVoice, plainListener } from '../../../src/app/voice.ts';
import { loadEar } from '../../../src/language/ear/ear.ts';
import { decodeNote } from '../../../src/speech/sound/decode.ts';
import type { Clip } from './set.ts';

/** What became of a clip. `unsaid`: heard right, and waits for a word or was left. */
export interface HeardClip extends Clip {
  readonly heard: string;
  readonly confidence: number;
  readonly end: 'recorded' | 'asked' | 'rejected';
  /** Whether the words come to what was said. */
  readonly isRight: boolean;
  /** Whether anything would be recorded if the words were believed. */
  readonly hasEntry: boolean;
  readonly seconds: number;
  readonly ms: number;
  /** Of the processor, whatever else the machine does meanwhile. */
  readonly cpuMs: number;
}

export async function measureClips(
  recogniser: Recogniser,
  clips: readonly Clip[],
): Promise<readonly HeardClip[]> {
  const intents = join(process.cwd(), 'intents');
  const voice = loadVoice(intents, 'en');
  const settings = {
    unit: 'lb',
    currency: 'USD',
    timezone: 'UTC',
    language: 'en',
    laborAvoidable: true,
  } as const;
  const listener = plainListener(voice.language, settings);
  const hear = plainHearer({ voice, ear: loadEar(intents, 'en'), decode: decodeNote, recogniser });
  const read = (line: string, confidence = 1) =>
    judgeWords(voice, listener, { settings, line, at: '2026-03-06T15:00:00Z', heard: { confidence } });
  const found: HeardClip[] = [];
  for (const clip of clips) {
    const bytes = readFileSync(clip.path);
    const seconds = (await decodeNote(bytes)).samples.length / 16_000;
    const [from, before] = [performance.now(), process.cpuUsage()];
    const hearing = await hear(bytes, 'cook');
    const ms = performance.now() - from;
    const { user, system } = process.cpuUsage(before);
    // A note that took too long is told like one that was not heard.
    const [heard, confidence] =
      hearing.is === 'trouble' ? [hearing.reply.id, 0] : [hearing.text, hearing.heard.confidence];
    const judged = hearing.is !== 'words' ? { entries: [], ask: null } : read(heard, confidence);
    const believed = read(heard);
    const isRight = clip.said !== undefined && JSON.stringify(believed) === JSON.stringify(read(clip.said));
    const end = judged.entries.length > 0 ? 'recorded' : judged.ask === null ? 'rejected' : 'asked';
    console.error([clip.path, end, confidence.toFixed(3), heard].join('\t'));
    found.push({
      ...clip,
      heard,
      confidence,
      end,
      isRight,
      hasEntry: believed.entries.length > 0,
      seconds,
      ms,
      cpuMs: (user + system) / 1000,
    });
  }
  return found;
}

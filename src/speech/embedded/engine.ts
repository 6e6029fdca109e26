// The recogniser that comes with the program: a small acoustic model and a narrow grammar, in a thread with limits.
import {
  type Expected,
  type Recogniser,
  SAMPLES_PER_SECOND,
  type Sound,
  type Transcript,
} from '../../app/ports/speech.ts';
import { agreed, NOTHING, type Pass, type Rivals } from './agreement.ts';
import { faster } from './stretch.ts';
import { newThread, type Thread } from './thread.ts';

export interface Limits {
  /** What one note may take for each second of sound, and at least. */
  readonly msPerSecond: number;
  readonly leastMs: number;
  /** The thread is let go when its memory has grown beyond this. */
  readonly mostBytes: number;
}

const LIMITS: Limits = { msPerSecond: 4000, leastMs: 20_000, mostBytes: 512 * 1024 * 1024 };
const SPEEDS = [1.06, 0.94];

/** `workerFile` is src/speech/embedded/worker.js, wherever the program was started from. */
export function embedded(workerFile: string, limits: Limits = LIMITS): Recogniser {
  const thread = newThread(workerFile);
  let queue: Promise<unknown> = Promise.resolve();
  const hear: Recogniser['hear'] = async (sound, expected) => {
    const ms = Math.max(limits.leastMs, (sound.samples.length / SAMPLES_PER_SECOND) * limits.msPerSecond);
    try {
      const { transcript, bytes } = await look(thread, ms, { sound, expected });
      if (bytes > limits.mostBytes) await thread.letGo();
      return transcript;
    } catch (error) {
      // A thread that failed or is late is of no further use; the next note gets a fresh one.
      await thread.letGo();
      throw error;
    }
  };
  return {
    name: 'embedded',
    hear: (sound, expected) => {
      const heard = queue.then(() => hear(sound, expected));
      queue = heard.catch(() => undefined);
      return heard;
    },
    close: thread.letGo,
  };
}

interface Note {
  readonly sound: Sound;
  readonly expected: Expected;
}

/** Passes over the sound at several speeds, then a comparison of what was heard with what is near it. */
async function look(
  thread: Thread,
  ms: number,
  { sound, expected }: Note,
): Promise<{ transcript: Transcript; bytes: number }> {
  const { samples } = sound;
  const { grammar, pronounced, spelled, near } = expected;
  const versions = [samples, ...SPEEDS.map((speed) => faster(samples, speed))];
  const first = await thread.ask<{ passes: readonly Pass[] }>(
    { task: 'passes', samples: versions, expected: { grammar, pronounced, spelled } },
    ms,
  );
  const words = first.passes[0]?.words ?? '';
  if (words === '') return { transcript: NOTHING, bytes: first.bytes };
  const rivals = await thread.ask<Rivals>(
    { task: 'rivals', samples: [samples], words, near: near(words) },
    ms,
  );
  return { transcript: agreed(first.passes, rivals, samples.length / 160), bytes: rivals.bytes };
}

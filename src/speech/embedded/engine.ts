// The recogniser that comes with the program: a small acoustic model and a narrow grammar, in a thread with limits.
import { Worker } from 'node:worker_threads';
import {
  type Recogniser,
  SAMPLES_PER_SECOND,
  type Sound,
  SpeechError,
  type Expected,
} from '../../app/ports/speech.ts';
import { agreed, type Pass } from './agreement.ts';
import { faster } from './stretch.ts';

export interface Limits {
  /** What one note may take for each second of sound, and at least. */
  readonly msPerSecond: number;
  readonly leastMs: number;
  /** The thread is let go when its memory has grown beyond this. */
  readonly mostBytes: number;
}

const LIMITS: Limits = { msPerSecond: 2000, leastMs: 10_000, mostBytes: 512 * 1024 * 1024 };
/** Loading the model and the first grammar. */
const START_MS = 30_000;

interface Answer {
  readonly id: number;
  readonly passes: readonly Pass[];
  readonly bytes: number;
}

/** `workerFile` is src/speech/embedded/worker.js, wherever the program was started from. */
export function embedded(workerFile: string, limits: Limits = LIMITS): Recogniser {
  let thread: Promise<Worker> | undefined;
  let count = 0;
  let queue: Promise<unknown> = Promise.resolve();
  const letGo = async (): Promise<void> => {
    const ended = thread;
    thread = undefined;
    await ended?.then((worker) => worker.terminate()).catch(() => undefined);
  };
  const ask = async (sound: Sound, expected: Expected): Promise<Answer> => {
    const worker = await (thread ??= started(workerFile));
    const ms = Math.max(limits.leastMs, (sound.samples.length / SAMPLES_PER_SECOND) * limits.msPerSecond);
    const { grammar, pronounced, spelled } = expected;
    const samples = [sound.samples, faster(sound.samples)];
    worker.postMessage({ id: (count += 1), samples, grammar, pronounced, spelled });
    return await answered<Answer>(worker, ms);
  };
  const hear: Recogniser['hear'] = async (sound, expected) => {
    try {
      const answer = await ask(sound, expected);
      if (answer.bytes > limits.mostBytes) await letGo();
      return agreed(answer.passes);
    } catch (error) {
      // A thread that failed or is late is of no further use; the next note gets a fresh one.
      await letGo();
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
    close: letGo,
  };
}

async function started(workerFile: string): Promise<Worker> {
  const worker = new Worker(workerFile, { resourceLimits: { maxOldGenerationSizeMb: 256 } });
  worker.unref();
  await answered(worker, START_MS);
  return worker;
}

/** The next message of the thread, or a classed fault where it ends, fails or is late. */
function answered<Message>(worker: Worker, ms: number): Promise<Message> {
  return new Promise((resolve, reject) => {
    const settle = (act: () => void) => (): void => {
      clearTimeout(late);
      worker.off('message', onMessage).off('error', onError).off('exit', onExit);
      act();
    };
    const fail = (fault: 'timeout' | 'unavailable', detail: string, cause?: unknown): void =>
      settle(() => {
        reject(new SpeechError(fault, detail, { cause }));
      })();
    const onMessage = (message: Message): void => {
      settle(() => {
        resolve(message);
      })();
    };
    const onError = (error: unknown): void => {
      fail('unavailable', 'the thread failed', error);
    };
    const onExit = (): void => {
      fail('unavailable', 'the thread ended');
    };
    const late = setTimeout(() => {
      fail('timeout', `no answer in ${ms} ms`);
    }, ms);
    worker.on('message', onMessage).on('error', onError).on('exit', onExit);
  });
}

// One thread, started with the first question, that answers one question at a time or is let go.
import { Worker } from 'node:worker_threads';
import { SpeechError } from '../../app/ports/speech.ts';

export interface Thread {
  /** Rejects with a SpeechError where the thread fails, ends or is late. */
  readonly ask: <Answer>(question: object, ms: number) => Promise<Answer & { readonly bytes: number }>;
  readonly letGo: () => Promise<void>;
}

/** Loading the models: a second, or much more on a machine that has much else to do. */
const START_MS = 60_000;
const HEAP_MB = 256;

export function newThread(file: string): Thread {
  let running: Promise<Worker> | undefined;
  let count = 0;
  return {
    ask: async (question, ms) => {
      const worker = await (running ??= started(file));
      // Only while it is waited for does it keep the process alive.
      worker.ref();
      worker.postMessage({ id: (count += 1), ...question });
      try {
        return await next(worker, ms);
      } finally {
        worker.unref();
      }
    },
    letGo: async () => {
      const ended = running;
      running = undefined;
      await ended?.then((worker) => worker.terminate()).catch(() => undefined);
    },
  };
}

async function started(file: string): Promise<Worker> {
  const worker = new Worker(file, { resourceLimits: { maxOldGenerationSizeMb: HEAP_MB } });
  // Once it is let go, what it still says is nobody's.
  worker.on('error', () => undefined);
  await next(worker, START_MS);
  return worker;
}

/** The next message of the thread, or a classed fault where it ends, fails or is late. */
function next<Message>(worker: Worker, ms: number): Promise<Message> {
  return new Promise((resolve, reject) => {
    const settled = (act: () => void): void => {
      clearTimeout(late);
      worker.off('message', onMessage).off('error', onError).off('exit', onExit);
      act();
    };
    const fail = (fault: 'timeout' | 'unavailable', detail: string, cause?: unknown): void => {
      settled(() => {
        reject(new SpeechError(fault, detail, { cause }));
      });
    };
    const onMessage = (message: Message): void => {
      settled(() => {
        resolve(message);
      });
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

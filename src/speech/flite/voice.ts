// A small voice that comes with the program: a text as WAV bytes, made in a thread with limits.
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { SpeechError } from '../../app/ports/speech.ts';

/** A reply is a few short lines; what is longer is not for the ear. */
export const LONGEST_TEXT = 1000;
const MOST_MS = 20_000;

/** `workerFile` is src/speech/flite/worker.js, wherever the program was started from. */
export async function spokenWav(workerFile: string, text: string): Promise<Uint8Array> {
  if (text.trim() === '') throw new SpeechError('empty', 'nothing to say');
  if (text.length > LONGEST_TEXT) throw new SpeechError('tooLong', `${text.length} letters`);
  const folder = await mkdtemp(join(tmpdir(), 'spoken-'));
  try {
    const file = join(folder, 'spoken.wav');
    await run(workerFile, { text, file });
    return await readFile(file);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** The thread ends with its text: a reply is spoken seldom, and the voice takes much memory. */
async function run(workerFile: string, job: { readonly text: string; readonly file: string }): Promise<void> {
  // It tells of an unfinished part of the platform on its error stream, which is nobody's business.
  const worker = new Worker(workerFile, { stderr: true, resourceLimits: { maxOldGenerationSizeMb: 256 } });
  try {
    worker.postMessage({ id: 1, ...job });
    const status = await answerOf(worker);
    if (status !== 0) throw new SpeechError('unavailable', `the voice ended with ${status}`);
  } finally {
    await worker.terminate();
  }
}

function answerOf(worker: Worker): Promise<number> {
  return new Promise((resolve, reject) => {
    const late = setTimeout(() => {
      reject(new SpeechError('timeout', `not said in ${MOST_MS} ms`));
    }, MOST_MS);
    worker.once('message', ({ status }: { status: number }) => {
      clearTimeout(late);
      resolve(status);
    });
    worker.once('error', (error) => {
      clearTimeout(late);
      reject(new SpeechError('unavailable', 'the thread failed', { cause: error }));
    });
  });
}

// The recogniser that comes with the program: two small acoustic models and a narrow grammar, in a thread with limits.
import {
  type Expected,
  type Recogniser,
  SAMPLES_PER_SECOND,
  type Sound,
  SpeechError,
} from '../../app/ports/speech.ts';
import { type Evidence, transcriptOf } from './agreement.ts';
import { type Automaton, automaton } from './automaton.ts';
import { type Ask, look, type Pass } from './look.ts';
import { newThread, type Thread } from './thread.ts';

export interface Limits {
  /** What one note may take for each second of sound, and at least. */
  readonly msPerSecond: number;
  readonly leastMs: number;
  /** The thread is let go when its memory has grown beyond this. */
  readonly mostBytes: number;
}

const LIMITS: Limits = { msPerSecond: 4000, leastMs: 20_000, mostBytes: 512 * 1024 * 1024 };

/** What the looks at a note came to, for whoever fits the sureness to them. */
export type Watch = (evidence: Evidence | undefined) => void;

/** `workerFile` is src/speech/embedded/worker.js, wherever the program was started from. */
export function embedded(workerFile: string, limits: Limits = LIMITS, watch?: Watch): Recogniser {
  const thread = newThread(workerFile);
  const grammarOf = keeper();
  let queue: Promise<unknown> = Promise.resolve();
  const hear: Recogniser['hear'] = async (sound, expected) => {
    const ms = Math.max(limits.leastMs, (sound.samples.length / SAMPLES_PER_SECOND) * limits.msPerSecond);
    const frames = sound.samples.length / FRAME;
    const { near, isSame } = expected;
    const { ask, most } = asking(thread, ms, { sound, expected });
    try {
      const looked = await look(ask, { whole: grammarOf(expected.grammar), near, isSame });
      const isMixable = looked !== undefined && expected.isMixable(looked.words);
      const evidence = looked && { looked, frames, isMixable };
      watch?.(evidence);
      if (most() > limits.mostBytes) await thread.letGo();
      return transcriptOf(evidence, expected.isUnusual);
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

/** A hundredth of a second. */
const FRAME = SAMPLES_PER_SECOND / 100;

/** The last grammar, made once: it mostly stays from note to note. */
function keeper(): (grammar: string) => Automaton {
  let last: { grammar: string; made: Automaton } | undefined;
  return (grammar) =>
    (last?.grammar === grammar ? last : (last = { grammar, made: automaton(grammar) })).made;
}

interface Note {
  readonly sound: Sound;
  readonly expected: Expected;
}

/** Asks the thread about one note, within the time that the whole note has. */
function asking(thread: Thread, ms: number, { sound, expected }: Note): { ask: Ask; most: () => number } {
  const until = performance.now() + ms;
  const { pronounced, spelled } = expected;
  let most = 0;
  const ask: Ask = async (by, words) => {
    const left = until - performance.now();
    if (left <= 0) throw new SpeechError('timeout', `no answer in ${ms} ms`);
    const question = { by, automaton: words, samples: sound.samples, pronounced, spelled };
    const { bytes, ...pass } = await thread.ask<Pass>(question, left);
    most = Math.max(most, bytes);
    return pass;
  };
  return { ask, most: () => most };
}

// A model on this machine, by the optional package sherpa-onnx-node: Whisper, Moonshine and transducer folders are told
// apart by their files. It computes in a thread of its own; nothing is fetched.
import { readdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { type Recogniser, SAMPLES_PER_SECOND, type Sound, SpeechError } from '../app/ports/speech.ts';

interface Stream {
  acceptWaveform(wave: { readonly sampleRate: number; readonly samples: Float32Array }): void;
}
interface Model {
  createStream(): Stream;
  decodeAsync(stream: Stream): Promise<{ readonly text: string }>;
}
interface Sherpa {
  readonly OfflineRecognizer: { createAsync(config: object): Promise<Model> };
}

/** These models tell no confidence that holds: every entry waits for a word. */
const CONFIDENCE = 0.5;

export function localRecogniser(folder: string, language: string): Recogniser {
  let model: Promise<Model> | undefined;
  return {
    name: 'local',
    hear: async (sound) => {
      model ??= opened(folder, language);
      // What could not be opened is tried anew with the next note.
      model.catch(() => (model = undefined));
      const words = await heard(model, sound);
      return { words, confidence: words === '' ? 0 : CONFIDENCE };
    },
    close: () => {
      model = undefined;
      return Promise.resolve();
    },
  };
}

async function heard(opening: Promise<Model>, { samples }: Sound): Promise<string> {
  const model = await opening;
  const stream = model.createStream();
  stream.acceptWaveform({ sampleRate: SAMPLES_PER_SECOND, samples });
  const { text } = await model.decodeAsync(stream);
  return text
    .toLowerCase()
    .replace(/[.,!?;:]+(?=\s|$)/g, '')
    .trim();
}

async function opened(folder: string, language: string): Promise<Model> {
  const { OfflineRecognizer } = sherpa();
  const modelConfig = { ...modelIn(folder, language), numThreads: 1, provider: 'cpu', debug: 0 };
  const featConfig = { sampleRate: SAMPLES_PER_SECOND, featureDim: 80 };
  try {
    return await OfflineRecognizer.createAsync({ featConfig, modelConfig });
  } catch (error) {
    throw new SpeechError('notInstalled', folder, { cause: error });
  }
}

function sherpa(): Sherpa {
  try {
    return createRequire(import.meta.url)('sherpa-onnx-node') as Sherpa;
  } catch (error) {
    throw new SpeechError('notInstalled', 'sherpa-onnx-node', { cause: error });
  }
}

/** The files of a layout by the words in their names; the smaller of two (int8) where both are there. */
export function modelIn(folder: string, language: string): Readonly<Record<string, unknown>> {
  const files = filesIn(folder);
  const find = (part: RegExp): string | undefined => {
    const fitting = files.filter((file) => part.test(file)).sort();
    const file = fitting.find((each) => each.includes('int8')) ?? fitting[0];
    return file === undefined ? undefined : join(folder, file);
  };
  const tokens = find(/tokens\.txt$/);
  const encoder = find(/encoder?.*\.onnx$|encode.*\.onnx$/);
  const decoder = find(/(?<!un)(?<!cached_)decoder.*\.onnx$/);
  const joiner = find(/joiner.*\.onnx$/);
  const preprocessor = find(/preprocess.*\.onnx$/);
  const uncachedDecoder = find(/(?<!un)uncached.*\.onnx$/);
  const cachedDecoder = find(/(?<!un)cached.*\.onnx$/);
  if (tokens !== undefined && preprocessor !== undefined && encoder !== undefined)
    return { tokens, moonshine: { preprocessor, encoder, uncachedDecoder, cachedDecoder } };
  if (tokens === undefined || encoder === undefined || decoder === undefined)
    throw new SpeechError('notInstalled', `no model in ${folder}`);
  return joiner === undefined
    ? { tokens, whisper: { encoder, decoder, language, task: 'transcribe' } }
    : { tokens, transducer: { encoder, decoder, joiner } };
}

function filesIn(folder: string): readonly string[] {
  try {
    return readdirSync(folder);
  } catch (error) {
    throw new SpeechError('notInstalled', folder, { cause: error });
  }
}

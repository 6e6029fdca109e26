// A server of the common form: POST of a file to …/v1/audio/transcriptions (multipart: file, model, language, prompt,
// response_format), as local and hosted recognisers offer it.
import {
  type Expected,
  type Recogniser,
  type Sound,
  SpeechError,
  type Transcript,
} from '../../app/ports/speech.ts';
import { wavOf } from './wav.ts';
import { plainWords } from './words.ts';

export interface HttpSetting {
  /** The server, or the whole path of its transcriptions. */
  readonly url: string;
  readonly language: string;
  readonly timeoutMs?: number;
  readonly pauseMs?: number;
}

const TIMEOUT_MS = 10_000;
const PAUSE_MS = 300;
const TRIES = 3;
/** Such servers take a prompt of some 200 tokens, and drop the beginning of a longer one. */
const LONGEST_PROMPT = 600;

export function httpRecogniser(setting: HttpSetting): Recogniser {
  const url = addressOf(setting.url);
  return {
    name: `http ${url.host}`,
    hear: async (sound, expected) => transcriptOf(await askPatiently(url, setting, { sound, expected })),
    close: () => Promise.resolve(),
  };
}

const PATH = 'v1/audio/transcriptions';

/** The address of a server is enough; a path that already names the transcriptions stays. */
function addressOf(url: string): URL {
  return /\/transcriptions\/?$/.test(new URL(url).pathname)
    ? new URL(url)
    : new URL(PATH, `${url.replace(/\/$/, '')}/`);
}

interface Heard {
  readonly sound: Sound;
  readonly expected: Expected;
}

/** A busy or broken server is asked again; one that refuses the request is not. */
async function askPatiently(url: URL, setting: HttpSetting, heard: Heard): Promise<unknown> {
  for (let tries = 1; ; tries += 1) {
    try {
      return await askOnce(url, setting, heard);
    } catch (error) {
      const lasts = error instanceof SpeechError && error.fault !== 'unavailable';
      if (lasts || tries === TRIES) throw error;
      await new Promise((resolve) => setTimeout(resolve, (setting.pauseMs ?? PAUSE_MS) * tries));
    }
  }
}

async function askOnce(
  url: URL,
  { language, timeoutMs = TIMEOUT_MS }: HttpSetting,
  { sound, expected }: Heard,
): Promise<unknown> {
  const body = new FormData();
  body.set('file', new Blob([wavOf(sound)], { type: 'audio/wav' }), 'note.wav');
  body.set('model', 'whisper-1'); // the name in that form; servers with one model take any
  body.set('language', language);
  body.set('prompt', expected.hint.slice(0, LONGEST_PROMPT));
  body.set('response_format', 'verbose_json');
  try {
    const response = await fetch(url, { method: 'POST', body, signal: AbortSignal.timeout(timeoutMs) });
    if (!response.ok) throw refusal(response.status);
    return await response.json();
  } catch (error) {
    if (error instanceof SpeechError) throw error;
    if (error instanceof SyntaxError) throw new SpeechError('nonsense', 'no JSON', { cause: error });
    const isLate = error instanceof Error && error.name === 'TimeoutError';
    throw new SpeechError(isLate ? 'timeout' : 'unavailable', 'no answer', { cause: error });
  }
}

const refusal = (status: number): SpeechError =>
  new SpeechError(status === 429 || status >= 500 ? 'unavailable' : 'nonsense', `status ${status}`);

interface Segment {
  readonly avg_logprob?: unknown;
  readonly no_speech_prob?: unknown;
}

/** Without the server's own estimate nothing is taken for sure: every entry then waits for a word. */
const UNKNOWN_CONFIDENCE = 0.5;

function transcriptOf(answer: unknown): Transcript {
  if (typeof answer !== 'object' || answer === null || !('text' in answer) || typeof answer.text !== 'string')
    throw new SpeechError('nonsense', 'an answer without text');
  const segments = 'segments' in answer && Array.isArray(answer.segments) ? answer.segments : [];
  const words = plainWords(answer.text);
  return {
    words,
    confidence: words === '' ? 0 : Math.min(...segments.map(sureness), 1) * known(segments),
  };
}

const known = (segments: readonly Segment[]): number =>
  segments.some(({ avg_logprob: logprob }) => typeof logprob === 'number') ? 1 : UNKNOWN_CONFIDENCE;

/** Nothing is fitted for servers: below this, what the model thinks of itself is not enough to record. */
const SURE_FROM = 0.96;
/** Such an entry waits for a word. */
const AT_MOST_IN_DOUBT = 0.7;

/** What the model thinks of its tokens on average, less what it takes for no speech. */
function sureness({ avg_logprob: logprob, no_speech_prob: silence }: Segment): number {
  const speech = typeof silence === 'number' ? 1 - silence : 1;
  if (typeof logprob !== 'number') return 1;
  const own = Math.exp(logprob) * speech;
  return own >= SURE_FROM ? own : Math.min(own, AT_MOST_IN_DOUBT);
}

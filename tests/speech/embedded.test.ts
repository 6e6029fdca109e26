// The engine that comes with the program, on what the voice that comes with it says, on noise, and on its limits.
import { describe, expect, it } from 'vitest';
import { embedded } from '../../src/speech/embedded/engine.ts';
import { plainHearer } from '../../src/app/hear.ts';
import { judgeWords } from '../../src/app/judge-words.ts';
import { type Sound, SpeechError } from '../../src/app/ports/speech.ts';
import { plainListener } from '../../src/app/voice.ts';
import { recogniserContract, SAID } from '../app/ports/speech.contract.ts';
import { ear, expected, soundSaid, voice, workerFile } from './given.ts';

recogniserContract('embedded', {
  open: () => embedded(workerFile('embedded')),
  spoken: soundSaid,
  expected: expected(),
});

const fault = async (promise: Promise<unknown>): Promise<unknown> => {
  const error: unknown = await promise.then(
    () => undefined,
    (reason: unknown) => reason,
  );
  return error instanceof SpeechError ? error.fault : error;
};

describe('the limits of the embedded engine', () => {
  it('ends a note that takes too long, and hears the next one', async () => {
    const sound = await soundSaid(SAID);
    const hurried = embedded(workerFile('embedded'), { msPerSecond: 1, leastMs: 1, mostBytes: 2 ** 30 });
    expect(await fault(hurried.hear(sound, expected()))).toBe('timeout');
    expect(await fault(hurried.hear(sound, expected()))).toBe('timeout');
    await hurried.close();
  });

  it('lets a thread go that has grown too large, and hears the next note in a fresh one', async () => {
    const sound = await soundSaid(SAID);
    const small = embedded(workerFile('embedded'), { msPerSecond: 10_000, leastMs: 60_000, mostBytes: 1 });
    expect((await small.hear(sound, expected())).words).toBe(SAID);
    expect((await small.hear(sound, expected())).words).toBe(SAID);
    await small.close();
  });

  it('tells that it is not there where its thread can not start', async () => {
    const missing = embedded(workerFile('nowhere'));
    const sound = { samples: new Float32Array(16_000) };
    expect(await fault(missing.hear(sound, expected()))).toBe('unavailable');
    await missing.close();
  });
});

describe('what is no entry', () => {
  /** The same noise every time. */
  const noise = (level: (at: number) => number): Float32Array => {
    let seed = 7;
    return Float32Array.from({ length: 32_000 }, (_, at) => {
      seed = (seed * 1_103_515_245 + 12_345) % 2 ** 31;
      return (seed / 2 ** 30 - 1) * level(at);
    });
  };

  it.each([
    ['hiss', noise(() => 0.1)],
    ['bangs', noise((at) => (at % 8000 < 400 ? 0.9 : 0.01))],
    ['a hum', Float32Array.from({ length: 32_000 }, (_, at) => 0.3 * Math.sin(at / 20))],
  ])('%s is not recorded', async (_, samples) => {
    expect(await recorded({ samples })).toEqual([]);
  });

  it.each(['who left the walk in open', 'table nine wants their check', 'my shift ends at six'])(
    'talk is not recorded: %s',
    async (words) => {
      expect(await recorded(await soundSaid(words))).toEqual([]);
    },
  );

  // So that the tests above can fail: what is said clearly is recorded by the same path.
  it('while an entry is recorded', async () => {
    expect(await recorded(await soundSaid(SAID))).toMatchObject([{ kind: 'weigh', part: 'fat' }]);
  });
});

/** The entries that a voice note with this sound leaves, with no kitchen behind it: what `hear` does. */
async function recorded(sound: Sound): Promise<readonly unknown[]> {
  const recogniser = embedded(workerFile('embedded'));
  const hear = plainHearer({ voice, ear, recogniser, decode: () => Promise.resolve(sound) });
  const hearing = await hear(new Uint8Array(), 'cook');
  await recogniser.close();
  if (hearing.is !== 'words') return [];
  const { text: line, heard } = hearing;
  return judgeWords(voice, plainListener(voice.language, SETTINGS), {
    settings: SETTINGS,
    line,
    heard,
    at: '2026-03-06T15:00:00Z',
  }).entries;
}

const SETTINGS = {
  unit: 'lb',
  currency: 'USD',
  timezone: 'UTC',
  language: 'en',
  laborAvoidable: true,
} as const;

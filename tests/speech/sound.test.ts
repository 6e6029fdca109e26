// Bytes to sound and back: what is kept, what is left out, and what is refused in which words.
import { describe, expect, it } from 'vitest';
import { SpeechError } from '../../src/app/ports/speech.ts';
import { decodeNote } from '../../src/speech/sound/decode.ts';
import { encodeNote } from '../../src/speech/sound/encode.ts';
import { resampled } from '../../src/speech/sound/resample.ts';
import { wavOf } from '../../src/speech/http/wav.ts';

const RATE = 16_000;
const tone = (hertz: number, seconds = 1, rate = RATE): Float32Array =>
  Float32Array.from(
    { length: Math.round(seconds * rate) },
    (_, at) => 0.5 * Math.sin((2 * Math.PI * hertz * at) / rate),
  );

/** How strong a tone is in the middle of a sound. */
function strength(samples: Float32Array, hertz: number): number {
  const middle = samples.subarray(samples.length / 4, (samples.length * 3) / 4);
  let [sine, cosine] = [0, 0];
  middle.forEach((value, at) => {
    sine += value * Math.sin((2 * Math.PI * hertz * at) / RATE);
    cosine += value * Math.cos((2 * Math.PI * hertz * at) / RATE);
  });
  return (2 * Math.hypot(sine, cosine)) / middle.length;
}

const faultOf = async (bytes: Uint8Array): Promise<unknown> => {
  const error: unknown = await decodeNote(bytes).catch((reason: unknown) => reason);
  return error instanceof SpeechError ? error.fault : error;
};

describe('a voice note', () => {
  it('comes back with its length and its tone', async () => {
    const { samples } = await decodeNote(encodeNote({ samples: tone(440, 1.5) }));
    expect(samples.length / RATE).toBeCloseTo(1.5, 2);
    expect(strength(samples, 440)).toBeGreaterThan(0.35);
    expect(strength(samples, 900)).toBeLessThan(0.05);
  });

  it.each([0.21, 0.5, 0.999, 7.31])('of %d s has that length', async (seconds) => {
    const { samples } = await decodeNote(encodeNote({ samples: tone(300, seconds) }));
    expect(samples.length / RATE).toBeCloseTo(seconds, 2);
  });

  it('keeps its bits to a known number', () => {
    const bytes = encodeNote({ samples: tone(440, 4) });
    expect((bytes.length * 8) / 4).toBeLessThan(40_000);
  });

  const whole = encodeNote({ samples: tone(440) });

  it.each([
    ['nothing', new Uint8Array(), 'empty'],
    ['text', new TextEncoder().encode('trim one point three'), 'wrongType'],
    ['one letter', new TextEncoder().encode('O'), 'truncated'],
    ['only its head', whole.subarray(0, 20), 'truncated'],
    ['its first half', whole.subarray(0, whole.length / 2), 'truncated'],
    ['without its last byte', whole.subarray(0, -1), 'truncated'],
    ['with something behind', Buffer.concat([whole, Buffer.from('and so on')]), 'nonsense'],
    ['too much', new Uint8Array(7_000_000), 'tooLarge'],
    ['a blink', encodeNote({ samples: tone(440, 0.05) }), 'empty'],
    ['over a minute', encodeNote({ samples: new Float32Array(61.5 * RATE) }), 'tooLong'],
    [
      'another thing in the same pages',
      Buffer.from(Buffer.from(whole).toString('latin1').replace('OpusHead', 'OtherOne'), 'latin1'),
      'wrongType',
    ],
  ])('that is %s is refused', async (_, bytes, fault) => {
    expect(await faultOf(bytes)).toBe(fault);
  });
});

describe('a WAV file', () => {
  it('comes back as it was', async () => {
    const { samples } = await decodeNote(wavOf({ samples: tone(440) }));
    expect(samples.length).toBe(RATE);
    expect(strength(samples, 440)).toBeCloseTo(0.5, 2);
  });

  const whole = wavOf({ samples: tone(440) });
  const changed = (at: number, value: number): Uint8Array => {
    const copy = whole.slice();
    copy[at] = value;
    return copy;
  };

  it.each([
    ['cut off', whole.subarray(0, 1000), 'truncated'],
    ['cut off in its head', whole.subarray(0, 30), 'truncated'],
    ['of another kind', Buffer.from('RIFF....AVI LIST'), 'wrongType'],
    ['not of plain samples', changed(20, 6), 'wrongType'],
    ['of 8 bits', changed(34, 8), 'wrongType'],
    ['of no channel', changed(22, 0), 'wrongType'],
    ['of over a minute', wavOf({ samples: new Float32Array(61 * RATE) }), 'tooLong'],
  ])('%s is refused', async (_, bytes, fault) => {
    expect(await faultOf(bytes)).toBe(fault);
  });
});

describe('another rate', () => {
  it.each([8000, 22_050, 44_100, 48_000])('of %d keeps the length and what can be kept', (rate) => {
    const sound = resampled(tone(1000, 1, rate), rate);
    expect(Math.abs(sound.length - RATE)).toBeLessThan(2);
    expect(strength(sound, 1000)).toBeCloseTo(0.5, 1);
  });

  it('leaves out what would come back as another tone', () => {
    expect(strength(resampled(tone(11_000, 1, 48_000), 48_000), 5000)).toBeLessThan(0.001);
  });
});

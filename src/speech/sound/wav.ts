// WAV bytes to sound: 16 bits, plain samples, any rate; of several channels the mean.
import { SpeechError, type Sound } from '../../app/ports/speech.ts';
import { type Limits, within } from './limits.ts';
import { resampled } from './resample.ts';

interface Form {
  readonly channels: number;
  readonly rate: number;
}

export function decodeWav(bytes: Uint8Array, limits: Limits): Sound {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < 12 || textAt(bytes, 8) !== 'WAVE') throw new SpeechError('wrongType', 'no WAVE');
  let form: Form | undefined;
  for (let at = 12; at + 8 <= bytes.length;) {
    const size = view.getUint32(at + 4, true);
    const start = at + 8;
    if (textAt(bytes, at) === 'fmt ') form = formAt(view, start);
    if (textAt(bytes, at) === 'data') {
      if (form === undefined) throw new SpeechError('nonsense', 'samples before their form');
      if (start + size > bytes.length) throw new SpeechError('truncated', 'in the samples');
      within(limits, size / 2 / form.channels / form.rate);
      return { samples: resampled(samplesAt(view, { start, size, ...form }), form.rate) };
    }
    at = start + size + (size % 2);
  }
  throw new SpeechError('truncated', 'no samples');
}

const textAt = (bytes: Uint8Array, at: number): string =>
  Buffer.from(bytes.subarray(at, at + 4)).toString('latin1');

const LOWEST_RATE = 8000;
const HIGHEST_RATE = 192_000;

function formAt(view: DataView, at: number): Form {
  if (at + 16 > view.byteLength) throw new SpeechError('truncated', 'in the form');
  const [kind, channels] = [view.getUint16(at, true), view.getUint16(at + 2, true)];
  const [rate, bits] = [view.getUint32(at + 4, true), view.getUint16(at + 14, true)];
  if (kind !== 1 || bits !== 16 || channels < 1 || channels > 2 || rate < LOWEST_RATE || rate > HIGHEST_RATE)
    throw new SpeechError('wrongType', `form ${kind}, ${bits} bits, ${channels} channels, ${rate}`);
  return { channels, rate };
}

function samplesAt(
  view: DataView,
  { start, size, channels }: Form & { start: number; size: number },
): Float32Array {
  return Float32Array.from({ length: Math.floor(size / 2 / channels) }, (_, at) => {
    let sum = 0;
    for (let channel = 0; channel < channels; channel += 1)
      sum += view.getInt16(start + (at * channels + channel) * 2, true);
    return sum / channels / 32_768;
  });
}

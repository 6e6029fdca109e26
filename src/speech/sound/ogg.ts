// OGG/Opus bytes to sound, in process, within limits that are checked before anything is decoded.
import { OggOpusDecoder } from 'ogg-opus-decoder';
import { SpeechError, type Sound } from '../../app/ports/speech.ts';
import { type Limits, within } from './limits.ts';
import { resampled } from './resample.ts';

/** RFC 7845: granule positions count 48,000 a second, whatever the sound was made from. */
const RATE = 48_000;

export async function decodeOgg(bytes: Uint8Array, limits: Limits): Promise<Sound> {
  within(limits, checkedEnd(bytes) / RATE);
  return { samples: resampled(await decoded(bytes), RATE) };
}

/** The last granule position, by walking the pages (RFC 3533): a file that stops in mid-page is told apart from another type. */
function checkedEnd(bytes: Uint8Array): number {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let end = 0;
  let isLast = false;
  for (let at = 0; at < bytes.length;) {
    if (!startsWith(bytes, at, 'OggS'.slice(0, bytes.length - at))) throw wrongOr(at);
    if (at + 27 > bytes.length) throw new SpeechError('truncated', `in the head of a page at ${at}`);
    const lacing = bytes.subarray(at + 27, at + 27 + (bytes[at + 26] ?? 0));
    const body = lacing.reduce((sum, each) => sum + each, 0);
    const start = at + 27 + (bytes[at + 26] ?? 0);
    if (at === 0 && start + 8 <= bytes.length && !startsWith(bytes, start, 'OpusHead'))
      throw new SpeechError('wrongType', 'not Opus');
    if (start + body > bytes.length) throw new SpeechError('truncated', `in a page at ${at}`);
    const granule = view.getBigUint64(at + 6, true);
    if (granule < 1n << 62n) end = Math.max(end, Number(granule));
    isLast ||= ((bytes[at + 5] ?? 0) & 4) !== 0;
    at = start + body;
  }
  if (end === 0) throw new SpeechError(isLast ? 'empty' : 'truncated', 'no sound');
  return end;
}

const wrongOr = (at: number): SpeechError =>
  new SpeechError(at === 0 ? 'wrongType' : 'nonsense', `no page at ${at}`);

const startsWith = (bytes: Uint8Array, at: number, text: string): boolean =>
  new TextEncoder().encode(text).every((letter, index) => bytes[at + index] === letter);

async function decoded(bytes: Uint8Array): Promise<Float32Array> {
  const decoder = new OggOpusDecoder();
  try {
    await decoder.ready;
    const { channelData, errors } = await decoder.decodeFile(bytes);
    if (errors.length > 0 && channelData[0]?.length === 0) throw new Error(errors[0]?.message);
    return mono(channelData);
  } catch (error) {
    throw new SpeechError('nonsense', 'cannot be decoded', { cause: error });
  } finally {
    decoder.free();
  }
}

function mono(channels: readonly Float32Array[]): Float32Array {
  const [first = new Float32Array(), second] = channels;
  return second === undefined ? first : first.map((value, at) => (value + (second[at] ?? 0)) / 2);
}

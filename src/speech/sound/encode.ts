// Sound to OGG/Opus bytes, as voice notes are sent: Opus packets of 20 ms (RFC 6716) in Ogg pages (RFC 3533, RFC 7845).
import OpusScript from 'opusscript';
import type { Sound } from '../../app/ports/speech.ts';
import { page } from './ogg-page.ts';

const RATE = 16_000;
const FRAME = RATE / 50;
/** RFC 7845: granule positions count at 48,000 a second. */
const GRANULE = 48_000 / 50;
/** What the encoder delays by at 48,000 a second (RFC 7845, 5.1: 80 ms at least is advised; libopus needs 6.5). */
const PRE_SKIP = 312;
const BITS_PER_SECOND = 24_000;
const PACKETS_A_PAGE = 25;

export function encodeNote({ samples }: Sound): Uint8Array {
  const packets = packetsOf(samples);
  const pages = [
    page([head()], { granule: 0, sequence: 0, first: true }),
    page([tags()], { granule: 0, sequence: 1 }),
  ];
  for (let at = 0; at < packets.length; at += PACKETS_A_PAGE) {
    const some = packets.slice(at, at + PACKETS_A_PAGE);
    const last = at + some.length === packets.length;
    const end = last ? PRE_SKIP + samples.length * 3 : (at + some.length) * GRANULE;
    pages.push(page(some, { granule: end, sequence: pages.length, last }));
  }
  return Buffer.concat(pages);
}

function packetsOf(samples: Float32Array): readonly Uint8Array[] {
  const encoder = new OpusScript(RATE, 1, OpusScript.Application.VOIP);
  encoder.setBitrate(BITS_PER_SECOND);
  const packets: Uint8Array[] = [];
  for (let at = 0; at < samples.length + PRE_SKIP / 3; at += FRAME) {
    const pcm = Buffer.alloc(FRAME * 2);
    for (let i = 0; i < FRAME; i += 1) {
      const value = Math.max(-1, Math.min(1, samples[at + i] ?? 0));
      pcm.writeInt16LE(Math.round(value * 32_767), i * 2);
    }
    packets.push(Uint8Array.from(encoder.encode(pcm, FRAME)));
  }
  encoder.delete();
  return packets;
}

function head(): Uint8Array {
  const bytes = Buffer.alloc(19);
  bytes.write('OpusHead', 0, 'latin1');
  bytes.set([1, 1], 8); // version, channels
  bytes.writeUInt16LE(PRE_SKIP, 10);
  bytes.writeUInt32LE(RATE, 12);
  return bytes;
}

function tags(): Uint8Array {
  const vendor = Buffer.from('blockhand');
  const bytes = Buffer.alloc(8 + 4 + vendor.length + 4);
  bytes.write('OpusTags', 0, 'latin1');
  bytes.writeUInt32LE(vendor.length, 8);
  vendor.copy(bytes, 12);
  return bytes;
}

// Sound as a WAV file: 16 bits, mono.
import { SAMPLES_PER_SECOND, type Sound } from '../../app/ports/speech.ts';

const HEAD = 44;

export function wavOf({ samples }: Sound): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(HEAD + samples.length * 2);
  const view = new DataView(bytes.buffer);
  const text = (at: number, letters: string): void => bytes.set(new TextEncoder().encode(letters), at);
  text(0, 'RIFF');
  view.setUint32(4, bytes.length - 8, true);
  text(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true); // plain samples
  view.setUint16(22, 1, true); // channels
  view.setUint32(24, SAMPLES_PER_SECOND, true);
  view.setUint32(28, SAMPLES_PER_SECOND * 2, true);
  view.setUint16(32, 2, true);
  view.setUint16(34, 16, true);
  text(36, 'data');
  view.setUint32(40, samples.length * 2, true);
  samples.forEach((value, at) => {
    view.setInt16(HEAD + at * 2, Math.round(Math.max(-1, Math.min(1, value)) * 32_767), true);
  });
  return bytes;
}

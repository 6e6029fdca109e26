// The bytes of a note to sound: the type is told by the first bytes, whatever the name says.
import { type Decode, SpeechError } from '../../app/ports/speech.ts';
import { LIMITS } from './limits.ts';
import { decodeOgg } from './ogg.ts';
import { decodeWav } from './wav.ts';

export const decodeNote: Decode = async (bytes) => {
  if (bytes.length === 0) throw new SpeechError('empty', 'no bytes');
  if (bytes.length > LIMITS.mostBytes) throw new SpeechError('tooLarge', `${bytes.length} bytes`);
  const isWav = Buffer.from(bytes.subarray(0, 4)).toString('latin1') === 'RIFF';
  return isWav ? decodeWav(bytes, LIMITS) : decodeOgg(bytes, LIMITS);
};

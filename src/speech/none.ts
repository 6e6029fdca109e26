// No engine: what is sent by voice is answered, and not heard.
import { type Recogniser, SpeechError } from '../app/ports/speech.ts';

export const none: Recogniser = {
  name: 'none',
  hear: () => Promise.reject(new SpeechError('off', 'no engine is set')),
  close: () => Promise.resolve(),
};

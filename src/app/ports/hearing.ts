// The port of a channel to the ear: the bytes of a note in, words out. A channel takes them up as a message with `heard`;
// of a note that came to no words it says the reply.
import type { Reply } from '../../core/reply.ts';
import type { SpeechFault } from './speech.ts';
import type { HeardAs } from './table.ts';

export type Hearing =
  | { readonly is: 'words'; readonly text: string; readonly heard: HeardAs }
  /** Noise, or talk that is not for us. */
  | { readonly is: 'nothing'; readonly text: string; readonly heard: HeardAs; readonly reply: Reply }
  /** The note can't be read, or there is nobody to hear it. */
  | { readonly is: 'trouble'; readonly fault: SpeechFault; readonly reply: Reply };

/** Hears a note of a speaker, whose standing question and open tests tell what may be said. Rejects only for a bug. */
export type HearNote = (bytes: Uint8Array, speaker: string) => Promise<Hearing>;

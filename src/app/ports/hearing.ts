// The port of a channel to the ear: the bytes of a note in, words out, ready to be taken up as a message.
import type { SpeechFault } from './speech.ts';
import type { HeardAs } from './table.ts';

/** Trouble is told in one sentence; nothing heard, that is noise or talk that is not for us, is told too. */
export type Hearing =
  | { readonly is: 'words'; readonly text: string; readonly heard: HeardAs }
  | { readonly is: 'nothing'; readonly text: string; readonly heard: HeardAs }
  | { readonly is: 'trouble'; readonly fault: SpeechFault };

/** Hears a note of a speaker, whose standing question and open tests tell what may be said. Rejects only for a bug. */
export type HearNote = (bytes: Uint8Array, speaker: string) => Promise<Hearing>;

// `speak "text" OUT.ogg`: the voice note that would be sent with a reply.
import { writeFileSync } from 'node:fs';
import { type SpeakNote, SpeechError, type SpeechFault } from '../app/ports/speech.ts';

export interface SpeakParts {
  readonly speak: SpeakNote;
  readonly err: (text: string) => void;
  /** The sentence for a trouble with a text or the voice. */
  readonly trouble: (fault: SpeechFault) => string;
}

/** Exit status: 0; 1 where nothing could be said; 2 where the options or the file are wrong. */
export async function speakCommand(
  args: readonly string[],
  { speak, err, trouble }: SpeakParts,
): Promise<number> {
  const [text, file, ...more] = args;
  if (text === undefined || file === undefined || more.length > 0) {
    err('speak "text" OUT.ogg');
    return 2;
  }
  try {
    const note = await speak(text);
    return written(file, note) ? 0 : (err(`${file}: the file can't be written`), 2);
  } catch (error) {
    if (!(error instanceof SpeechError)) throw error;
    err(trouble(error.fault));
    return 1;
  }
}

function written(file: string, note: Uint8Array): boolean {
  try {
    writeFileSync(file, note);
    return true;
  } catch {
    return false;
  }
}

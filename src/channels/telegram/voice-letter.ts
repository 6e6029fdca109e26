// A letter that is sent as a voice message.
import type { Log } from '../../app/ports/log.ts';
import type { Letter } from '../../app/ports/mailbox.ts';
import type { SpeakNote } from '../../app/ports/speech.ts';
import { traceOf } from './calls.ts';

/** What can't be read out is no loss: the text beside it says all of it. */
export async function asSound(
  { speak, log }: { readonly speak?: SpeakNote; readonly log: Log },
  letter: Letter,
): Promise<Letter | undefined> {
  try {
    const bytes = await speak?.(letter.text);
    return bytes && { ...letter, file: { name: 'answer.ogg', type: 'audio/ogg', bytes } };
  } catch (error) {
    log.warn(traceOf(error), 'not read out');
    return undefined;
  }
}

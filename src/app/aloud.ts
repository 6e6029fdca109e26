// What of an answer is for the ear: few words, of those who chose to hear them, and of a read-back always.
import { wantsVoice } from '../core/heard-out.ts';
import type { Question } from '../core/question.ts';
import { isHeardAsk } from '../intents/doubt.ts';
import type { Heeded } from './converse.ts';
import type { Message } from './ports/table.ts';

/** Some twenty seconds. What is longer is read, not heard. */
const LONGEST = 280;

/**
 * A press, or a message put right, is made with a hand that is free; but what was said aloud, and is pressed to be right, is
 * answered aloud too.
 */
export function isHeardOut(
  { speaker, pressed, replaces, heard }: Message,
  { kitchen, entries }: Pick<Heeded, 'kitchen' | 'entries'>,
  question: Question | undefined,
): boolean {
  const isOfSpoken = question !== undefined && isHeardAsk(question.asked);
  if (replaces !== undefined || (pressed !== undefined && !isOfSpoken)) return false;
  const isSpoken = heard !== undefined || isOfSpoken;
  return entries.some(isReadBack) || wantsVoice(kitchen.memory, speaker, isSpoken);
}

const isReadBack = (entry: unknown): boolean =>
  typeof entry === 'object' && entry !== null && 'kind' in entry && entry.kind === 'readBack';

/** Whole lines, as many as are soon said; of one that is too long its first words. `rest` is said where something is left out. */
export function forTheEar(text: string, rest: string): string {
  if (text.length <= LONGEST) return text;
  const lines = text.split('\n');
  let said = lines.shift() ?? '';
  for (const line of lines) {
    if (said.length + line.length > LONGEST) break;
    said = `${said}\n${line}`;
  }
  return `${said.length <= LONGEST ? said : said.slice(0, said.lastIndexOf(' ', LONGEST))}\n${rest}`;
}

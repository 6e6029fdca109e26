// What a speaker has chosen to hear.
import { ALOUD, type Aloud } from './aloud.ts';
import { newest } from './ledger.ts';
import { aloudKey, type Memory } from './memory.ts';

/** When answers are read out to a speaker: never, unless they chose otherwise. */
export function aloudTo(memory: Memory, speaker: string): Aloud {
  const found = newest(memory.get(aloudKey(speaker)) ?? []);
  const text = found !== undefined && 'text' in found.value ? found.value.text : undefined;
  return ALOUD.find((each) => each === text) ?? 'never';
}

/** `isSpoken`: what is answered was said aloud. */
export function wantsVoice(memory: Memory, speaker: string, isSpoken: boolean): boolean {
  switch (aloudTo(memory, speaker)) {
    case 'always':
      return true;
    case 'heard':
      return isSpoken;
    case 'never':
      return false;
  }
}

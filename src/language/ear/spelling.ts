// How a word is likely to sound by its letters, where no dictionary has it.
import type { Sounds } from './ear.ts';

/** Phones for the letters, the longest group first. A silent final e is left out. */
export function soundsOf({ letters }: Sounds, word: string): string {
  const spoken = word.length > 3 ? word.replace(/([^aeiouy])e$/, '$1') : word;
  const longest = Math.max(...Object.keys(letters).map((group) => group.length));
  const phones: string[] = [];
  for (let at = 0; at < spoken.length;) {
    let length = Math.min(longest, spoken.length - at);
    while (length > 1 && !Object.hasOwn(letters, spoken.slice(at, at + length))) length -= 1;
    const phone = letters[spoken.slice(at, at + length)];
    if (phone !== undefined) phones.push(phone);
    at += length;
  }
  return phones.join(' ');
}

// Slips of the finger in the words of the sentences ("portoins", "minuts"): a letter left out, doubled, or swapped with
// its neighbour. Never a changed letter: "parking" is not "packing".
import type { Language } from './language.ts';
import { isNumberWord } from './number-words.ts';
import type { Token } from './token.ts';
import { isUnitWord } from './units.ts';

export const spellKeywords = (language: Language, tokens: readonly Token[]): readonly Token[] =>
  tokens.map((token) =>
    token.kind === 'word' && token.text.length >= 4 && !isWord(language, token.text)
      ? spell(language, token)
      : token,
  );

function spell(language: Language, token: Token): Token {
  const meant = language.keywords.filter((keyword) => isSlipOf(token.text, keyword));
  const [only] = meant;
  return only !== undefined && meant.length === 1 ? { ...token, text: only } : token;
}

function isWord({ words, names, neverNames, lookalikes, numbers, units }: Language, text: string): boolean {
  const named = names.item.words.has(text) || names.part.words.has(text) || names.container.words.has(text);
  return (
    named ||
    words.has(text) ||
    neverNames.has(text) ||
    lookalikes.has(text) ||
    isNumberWord(numbers, text) ||
    isUnitWord(units, text)
  );
}

/** One letter left out, one doubled, or two neighbours swapped. */
export function isSlipOf(typed: string, word: string): boolean {
  if (typed.length === word.length - 1) return leavesOut(word, typed);
  if (typed.length === word.length + 1) return leavesOut(typed, word) && /(.)\1/.test(typed);
  return typed.length === word.length && isSwapOf(typed, word);
}

function leavesOut(longer: string, shorter: string): boolean {
  let at = 0;
  while (at < shorter.length && longer[at] === shorter[at]) at += 1;
  return longer.slice(at + 1) === shorter.slice(at);
}

function isSwapOf(typed: string, word: string): boolean {
  let at = 0;
  while (at < word.length && typed[at] === word[at]) at += 1;
  return (
    typed[at] === word[at + 1] &&
    typed[at + 1] === word[at] &&
    typed.slice(at + 2) === word.slice(at + 2) &&
    at < word.length - 1
  );
}

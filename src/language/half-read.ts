// A line that no sentence reads and that is an entry all the same, as far as anyone can tell: "trim about 1.1", "striploin 13-12
// at 6.95", "trim 1.1 x2". It is asked about; talk that holds a name and a number is not.
import type { Language } from './language.ts';
import type { Listener } from './listen.ts';
import { readNames } from './names.ts';
import type { Token } from './token.ts';

/** More words than this are a sentence among people. */
const LONGEST = 8;

interface Line {
  readonly language: Language;
  readonly tokens: readonly Token[];
  readonly starts: Listener['startsNumber'];
}

/** It begins with the name of a cut or a part, holds an amount as a scale or a price list shows it, and no word of talk. */
export function isHalfRead({ language, tokens, starts }: Line): boolean {
  const named = nameEnd(language, tokens);
  const rest = tokens.slice(named);
  return named > 0 && tokens.length <= LONGEST && rest.some(isAmount) && rest.every(isBeside);

  function isAmount(token: Token, at: number): boolean {
    const { units, numbers } = language;
    if (token.kind === 'figure' && token.text.includes('.')) return true;
    const before = rest[at - 1];
    const isUnit = units.weight.has(token.text) || numbers.point.has(token.text);
    return isUnit && before !== undefined && starts(before);
  }

  /** A number, a sign, or a word that only makes a number vague. */
  function isBeside(token: Token): boolean {
    const { units, softeners, amountWords, grades } = language;
    const { text } = token;
    if (token.kind !== 'word' || starts(token) || units.weight.has(text)) return true;
    return (
      softeners.has(text) || amountWords.has(text) || grades.has(text) || language.names.part.words.has(text)
    );
  }
}

/** Where the name ends that the line begins with; 0 if it begins with none. */
function nameEnd({ names, grades }: Language, tokens: readonly Token[]): number {
  const from = tokens.findIndex((token) => !grades.has(token.text));
  const read = [names.item, names.part].flatMap((index) =>
    readNames(index, tokens, { at: Math.max(0, from), untouched: () => true }),
  );
  return Math.max(0, ...read.map(({ end }) => end));
}

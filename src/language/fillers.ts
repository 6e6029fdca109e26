// Words that say nothing: dropped, with what they stood between kept.
import type { Language } from './language.ts';
import type { Token } from './token.ts';

/** Drops the words that say nothing; what they stood between keeps its breaks and its question mark. */
export function withoutFillers(language: Language, tokens: readonly Token[]): readonly Token[] {
  const kept: Token[] = [];
  let before: Token['before'] | undefined;
  let determined = false;
  for (let at = 0; at < tokens.length;) {
    const token = tokens[at];
    if (token === undefined) break;
    const length = token.kind === 'word' ? fillerAt(language, tokens, at) : 0;
    const stronger = strongest(before, token.before);
    if (length === 0) kept.push({ ...token, before: stronger, determined });
    before = length === 0 ? undefined : stronger;
    determined = length === 1 && language.articles.has(token.text);
    const last = kept.at(-1);
    if (length > 0 && tokens[at + length - 1]?.asks === true && last !== undefined)
      kept[kept.length - 1] = { ...last, asks: true };
    at += Math.max(1, length);
  }
  return kept;
}

const strongest = (a: Token['before'] | undefined, b: Token['before']): Token['before'] =>
  a === 'stop' || b === 'stop' ? 'stop' : a === 'comma' || b === 'comma' ? 'comma' : 'space';

function fillerAt(language: Language, tokens: readonly Token[], at: number): number {
  const phrases = language.fillers.get(tokens[at]?.text ?? '');
  const found = phrases?.find((phrase) => phrase.every((word, index) => tokens[at + index]?.text === word));
  return found?.length ?? 0;
}

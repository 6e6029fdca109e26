// Numbers that only name something: a supplier's lot "4471 B", an establishment "245A". Joined to one word;
// a dash is left out, and what was kept is read back.
import { type Numbers, wholes } from './cardinal.ts';
import { follows } from './reading.ts';
import type { SlotReader, SlotReading } from './slot.ts';
import type { Token } from './token.ts';

const LONGEST = 16;

/** Every length that holds a digit; what is written without a space between belongs together. */
export const codeReader =
  (numbers: Numbers): SlotReader =>
  (tokens, at) => {
    const found: SlotReading[] = [];
    let [text, end] = ['', at];
    for (;;) {
      const token = end === at ? tokens[at] : follows(tokens, end);
      const piece = token === undefined ? undefined : pieceAt(numbers, tokens, { token, at: end });
      if (piece === undefined || text.length + piece.text.length > LONGEST) return found;
      text += piece.text;
      end = piece.end;
      if (/\d/.test(text) && !isGlued(tokens, end)) found.push({ value: text, end, cost: 0 });
    }
  };

/** The next token stands right behind, or behind a dash. */
const isGlued = (tokens: readonly Token[], at: number): boolean => {
  const [last, next] = [tokens[at - 1], follows(tokens, at)];
  return last !== undefined && next !== undefined && next.from - last.to <= 0;
};

function pieceAt(
  numbers: Numbers,
  tokens: readonly Token[],
  { token, at }: { token: Token; at: number },
): { text: string; end: number } | undefined {
  if (token.kind === 'figure' && !token.garbled && /^\d+$/.test(token.text))
    return { text: token.text, end: at + 1 };
  if (numbers.words.oh.has(token.text)) return { text: '0', end: at + 1 };
  const number = wholes(numbers, tokens, at)
    .filter(({ form }) => form !== 'figure')
    .toSorted((a, b) => b.end - a.end)[0];
  if (number !== undefined) return { text: String(number.value), end: number.end };
  return token.kind === 'word' && (token.text.length === 1 || isGlued(tokens, at) || isGlued(tokens, at + 1))
    ? { text: token.text.toUpperCase(), end: at + 1 }
    : undefined;
}

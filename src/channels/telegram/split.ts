// Long answers as several messages, never cut short.

/**
 * The service takes 4096 UTF-16 units. What is left is for a notice before it.
 */
const LONGEST = 3800;

/** Splits between lines where that is possible, else between words, else anywhere but inside of a character. */
export function split(text: string, longest = LONGEST): readonly string[] {
  const pieces: string[] = [];
  let rest = text.trim();
  while (rest.length > longest) {
    const end = endOfPiece(rest, longest);
    pieces.push(rest.slice(0, end).trimEnd());
    rest = rest.slice(end).trimStart();
  }
  return rest === '' ? pieces : [...pieces, rest];
}

function endOfPiece(text: string, longest: number): number {
  for (const border of ['\n', ' ']) {
    const at = text.lastIndexOf(border, longest);
    if (at > 0) return at;
  }
  return isHighSurrogate(text.charCodeAt(longest - 1)) ? longest - 1 : longest;
}

const isHighSurrogate = (unit: number): boolean => unit >= 0xd800 && unit < 0xdc00;

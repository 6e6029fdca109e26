// Figures as they are typed: where a comma groups, where it is a decimal mark, and where it only separates.

/** One typed number of a run of digits, dots and commas; `garbled` where it can be read in no way or in two. */
export interface Figure {
  readonly text: string;
  readonly garbled: boolean;
}

const PLAIN = /^(\d+(\.\d+)?|\.\d+)$/;
const DIGITS = /^\d+$/;
const THOUSANDS = /^\d{3}$/;
const LAST_THOUSANDS = /^\d{3}(\.\d+)?$/;

/**
 * The numbers in a run such as "1,1" (1.1), "1,234" (1234), "16,15,16" (three numbers). A comma with exactly three digits
 * behind groups thousands; with one or two it is a decimal mark if it is the only mark in the number, else a separator.
 */
export function readFigures(run: string, decimalMark: '.' | ','): readonly Figure[] {
  const [point, comma] = decimalMark === '.' ? ['.', ','] : [',', '.'];
  const pieces = run.split(comma).map((piece) => piece.replaceAll(point, '.'));
  const [first = '', ...rest] = pieces;
  if (rest.length === 0) return [figure(first)];
  if (groups(first, rest)) return [figure(pieces.join(''))];
  const [fraction = ''] = rest;
  if (rest.length === 1 && DIGITS.test(first) && DIGITS.test(fraction))
    return fraction.length <= 2 ? [figure(`${first}.${fraction}`)] : [{ text: run, garbled: true }];
  const fits = pieces.every((piece) => PLAIN.test(piece)) && !rest.some((piece) => THOUSANDS.test(piece));
  return fits ? pieces.map(figure) : [{ text: run, garbled: true }];
}

function groups(first: string, rest: readonly string[]): boolean {
  const last = rest.at(-1) ?? '';
  return (
    /^[1-9]\d{0,2}$/.test(first) &&
    rest.slice(0, -1).every((piece) => THOUSANDS.test(piece)) &&
    LAST_THOUSANDS.test(last)
  );
}

function figure(text: string): Figure {
  if (!PLAIN.test(text) || text.length > 30) return { text, garbled: true };
  return { text: text.startsWith('.') ? `0${text}` : text, garbled: false };
}

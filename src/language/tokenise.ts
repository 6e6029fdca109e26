// From a line to tokens. The line is cut to a length that no entry needs; nothing here backtracks.
import { readFigures } from './figures.ts';
import type { Token } from './token.ts';

export const LONGEST_LINE = 600;

/** Signs that have a word of their own in the sentences. */
const SIGNS: Readonly<Record<string, string>> = {
  '+': 'plus', '&': 'and', '=': 'is', '×': 'x', '*': 'x', '@': '@', $: '$', '€': '$', '£': '$', '¥': '$', '%': '%', '#': '#', '/': '/', '⁄': '/',
}; // prettier-ignore
const STOPS = new Set(['.', '!', '?', '\n']);
const VULGAR = /[¼-¾⅐-⅞]/gu;
const INVISIBLE = /[\p{Cf}\p{Cc}]/gu;
const ACCENT = /\p{M}/gu;
const DIGIT = /\d/;
const LETTER = /\p{L}/u;

/** Full-width and composed forms made plain, invisible characters gone, lower case. Same length as far as it can be. */
function plain(line: string): string {
  return line
    .slice(0, LONGEST_LINE)
    .replace(VULGAR, (sign) => ` ${sign.normalize('NFKC')} `)
    .normalize('NFKC')
    .replace(INVISIBLE, (sign) => (sign === '\n' || sign === '\t' ? sign : ''))
    .normalize('NFD')
    .replace(ACCENT, '')
    .replace(/[’‘`´]/g, "'")
    .replace(/[–—−‐‑]/g, '-')
    .replace(/\.{2,}/g, ' ')
    .toLowerCase();
}

/** A line cut into tokens, and the plain text that their places refer to. */
export interface Line {
  readonly text: string;
  /** The line as it was written, where the places fit it too. */
  readonly written: string;
  readonly tokens: readonly Token[];
}

interface Scan {
  readonly text: string;
  readonly decimalMark: '.' | ',';
  /** Words whose full stop ends no sentence ("lb."). */
  readonly abbreviations: ReadonlySet<string>;
  readonly tokens: Token[];
  before: Token['before'];
}

const NO_ABBREVIATIONS: ReadonlySet<string> = new Set();

export function tokenise(line: string, decimalMark: '.' | ',' = '.', abbreviations = NO_ABBREVIATIONS): Line {
  const text = plain(line);
  const scan: Scan = { text, decimalMark, abbreviations, tokens: [], before: 'stop' };
  let at = 0;
  while (at < text.length) at = step(scan, at);
  return { text, written: text.length === line.length ? line : text, tokens: scan.tokens };
}

function step(scan: Scan, at: number): number {
  const clock = clockEnd(scan.text, at);
  if (clock > at) return unreadable(scan, at, clock);
  const char = scan.text[at] ?? '';
  const next = scan.text[at + 1] ?? '';
  if (DIGIT.test(char) || (char === '.' && DIGIT.test(next) && !DIGIT.test(scan.text[at - 1] ?? '')))
    return figures(scan, at);
  if (LETTER.test(char)) return word(scan, at);
  if (char === '-' && DIGIT.test(next) && startsNumber(scan.text, at)) return negative(scan, at);
  const sign = Object.hasOwn(SIGNS, char) ? SIGNS[char] : undefined;
  if (sign !== undefined) push(scan, { text: sign, kind: LETTER.test(sign) ? 'word' : 'mark' }, [at, at + 1]);
  else breakAt(scan, at);
  return at + 1;
}

/** A time of day ("7:30") or a range ("14-15") is no amount: it is kept together, and nothing reads it. "2-1/2" is two and a half. */
function clockEnd(text: string, at: number): number {
  if (!DIGIT.test(text[at] ?? '') || DIGIT.test(text[at - 1] ?? '')) return at;
  let end = at;
  while (DIGIT.test(text[end] ?? '')) end += 1;
  const mark = text[end];
  if (end - at > 2 || (mark !== ':' && mark !== '-') || !DIGIT.test(text[end + 1] ?? '')) return at;
  end += 1;
  while (DIGIT.test(text[end] ?? '') || (text[end] === '.' && DIGIT.test(text[end + 1] ?? ''))) end += 1;
  return mark === '-' && text[end] === '/' ? at : end;
}

function unreadable(scan: Scan, from: number, to: number): number {
  push(scan, { text: scan.text.slice(from, to), kind: 'mark' }, [from, to]);
  return to;
}

/** A dash is a minus where it stands before a digit and after a space, a sign or nothing. */
const startsNumber = (text: string, at: number): boolean =>
  at === 0 || /[\s$€£@=:,(]/.test(text[at - 1] ?? '');

function breakAt(scan: Scan, at: number): void {
  const char = scan.text[at] ?? '';
  const next = scan.text[at + 1] ?? '';
  const last = scan.tokens.at(-1);
  if (char === '?' && last !== undefined) scan.tokens[scan.tokens.length - 1] = { ...last, asks: true };
  if (char === '.' && scan.abbreviations.has(last?.text ?? '') && next !== '') return;
  if (STOPS.has(char)) scan.before = 'stop';
  else if (/[,;:()[\]"]/.test(char) || (char === '-' && next === ' ')) raise(scan, 'comma');
  else if (!/[\s'_-]/.test(char) && !/[\u2600-\u27bf\ud800-\udfff]/.test(char))
    push(scan, { text: char, kind: 'mark' }, [at, at + 1]);
}

function raise(scan: Scan, to: 'comma'): void {
  if (scan.before === 'space') scan.before = to;
}

function push(
  scan: Scan,
  token: Pick<Token, 'text' | 'kind'> & { garbled?: boolean },
  place: readonly [number, number],
): void {
  scan.tokens.push({
    garbled: false,
    ...token,
    before: scan.before,
    asks: false,
    determined: false,
    from: place[0],
    to: place[1],
  });
  scan.before = 'space';
}

function figures(scan: Scan, at: number): number {
  let end = at;
  while (end < scan.text.length && /[\d.,]/.test(scan.text[end] ?? '')) end += 1;
  while (end > at && /[.,]/.test(scan.text[end - 1] ?? '')) end -= 1;
  const bare = scan.text[at - 1] === decimalComma(scan) && /[\s(:=]/.test(scan.text[at - 2] ?? ' ');
  for (const [index, figure] of readFigures(scan.text.slice(at, end), scan.decimalMark).entries()) {
    if (index > 0) raise(scan, 'comma');
    push(scan, { text: figure.text, kind: 'figure', garbled: figure.garbled || bare }, [at, end]);
  }
  return end;
}

/** The comma in front of a number without its zero (",5"), where a comma is not the decimal mark of the language. */
const decimalComma = ({ decimalMark }: Scan): string => (decimalMark === '.' ? ',' : '.');

function negative(scan: Scan, at: number): number {
  const end = figures(scan, at + 1);
  const last = scan.tokens.at(-1);
  if (last !== undefined) scan.tokens[scan.tokens.length - 1] = { ...last, text: `-${last.text}`, from: at };
  return end;
}

/** Letters; an apostrophe between letters joins them ("what's" is "whats"). */
function word(scan: Scan, at: number): number {
  let end = at + 1;
  while (end < scan.text.length && isWordChar(scan.text, end)) end += 1;
  push(scan, { text: scan.text.slice(at, end).replaceAll("'", ''), kind: 'word' }, [at, end]);
  return end;
}

const isWordChar = (text: string, at: number): boolean =>
  LETTER.test(text[at] ?? '') || (text[at] === "'" && LETTER.test(text[at + 1] ?? ''));

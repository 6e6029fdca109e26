// The few shapes that a picture is made of, as SVG text. Sizes are for a phone: 720 wide, no text below 24, so that it
// stays readable at half the size.
import { FAINT_INK, INK } from './palette.ts';

export const WIDTH = 720;
export const MARGIN = 36;
export const RIGHT = WIDTH - MARGIN;
export const FONT = 'DejaVu Sans';

/** A piece of a picture and how high it is. */
export interface Block {
  readonly svg: string;
  readonly height: number;
}

export interface TextStyle {
  readonly size?: number;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly bold?: boolean;
  readonly faint?: boolean;
  /** What the text may be wide; it is cut to it. */
  readonly width?: number;
}

const BASE_SIZE = 26;
/** Of a letter, by its size: the mean of words with figures, and some more. */
const letterWidth = ({ size = BASE_SIZE, bold = false }: TextStyle): number => size * (bold ? 0.68 : 0.6);

/** How wide words may become. */
export const widthOf = (words: string, style: TextStyle = {}): number =>
  Math.ceil(Array.from(words).length * letterWidth(style)) + 1;

export function text(x: number, y: number, words: string, style: TextStyle = {}): string {
  const { size = BASE_SIZE, anchor = 'start', bold = false, faint = false, width = RIGHT - MARGIN } = style;
  const shown = escaped(cut(words, Math.floor(width / letterWidth(style))));
  const weight = bold ? ' font-weight="bold"' : '';
  return `<text x="${x}" y="${y}" font-family="${FONT}" font-size="${size}"${weight} text-anchor="${anchor}" fill="${faint ? FAINT_INK : INK}">${shown}</text>`;
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export const rect = ({ x, y, width, height }: Box, fill: string): string =>
  `<rect x="${x.toFixed(1)}" y="${y.toFixed(1)}" width="${width.toFixed(1)}" height="${height.toFixed(1)}" fill="${fill}"/>`;

type Corner = readonly [x: number, y: number];

export function line(
  points: readonly Corner[],
  stroke: string,
  style: { width?: number; dashed?: true } = {},
): string {
  const corners = points.map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ');
  const dashes = style.dashed === true ? ' stroke-dasharray="14 8"' : '';
  return `<polyline points="${corners}" fill="none" stroke="${stroke}" stroke-width="${style.width ?? 2}"${dashes}/>`;
}

export const dot = (x: number, y: number, fill: string, radius = 7): string =>
  `<circle cx="${x.toFixed(1)}" cy="${y.toFixed(1)}" r="${radius}" fill="${fill}"/>`;

function cut(words: string, most: number): string {
  const letters = Array.from(words);
  return letters.length <= most ? words : `${letters.slice(0, most - 1).join('')}…`;
}

const NAMES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** For XML, which has no place for control characters at all. */
const escaped = (words: string): string =>
  words.replace(/[&<>"]/g, (sign) => NAMES[sign] ?? sign).replace(/\p{Cc}|\p{Cs}/gu, ' ');

// Values over time, the oldest at the left, with the band in which their mean lies.
import type { Trend } from '../../app/ports/paper.ts';
import { BAND, GRID, TONES } from './palette.ts';
import { type Block, dot, line, MARGIN, rect, RIGHT, text } from './svg.ts';

const HIGH = 320;
const LEFT = MARGIN + 120;
const TICKS = 4;

export function trend({ points, band, tick }: Trend, top: number): Block {
  const { low, high } = rangeOf([
    ...points.map(({ value }) => value),
    ...(band ? [band.low, band.high] : []),
  ]);
  const yOf = (value: number): number => top + 12 + HIGH * (1 - (value - low) / (high - low));
  const xOf = (at: number): number =>
    points.length === 1 ? (LEFT + RIGHT) / 2 : LEFT + 20 + ((RIGHT - LEFT - 40) * at) / (points.length - 1);
  const ticks = Array.from({ length: TICKS + 1 }, (_, at) => low + ((high - low) * at) / TICKS).flatMap((value) => [
    line([[LEFT, yOf(value)], [RIGHT, yOf(value)]], GRID),
    text(LEFT - 12, yOf(value) + 9, tick(value), { size: 24, anchor: 'end', width: LEFT - 12 }),
  ]); // prettier-ignore
  const where = points.map(({ value }, at) => [xOf(at), yOf(value)] as const);
  const behind = band === undefined ? '' : shade(yOf(band.high), yOf(band.low));
  const half = (RIGHT - LEFT) / 2;
  const below = top + HIGH + 52;
  const ends = [
    text(LEFT, below, points[0]?.label ?? '', { size: 24, width: half }),
    ...(points.length > 1
      ? [text(RIGHT, below, points.at(-1)?.label ?? '', { size: 24, anchor: 'end', width: half })]
      : []),
  ];
  const note = band === undefined ? [] : [text(MARGIN, below + 44, band.text, { size: 24, faint: true })];
  const svg = [
    behind,
    ...ticks,
    line(where, TONES.plain, 3),
    ...where.map(([x, y]) => dot(x, y, TONES.plain)),
    ...ends,
    ...note,
  ];
  return { svg: svg.join(''), height: HIGH + 76 + note.length * 44 };
}

const THINNEST = 3;

const shade = (high: number, low: number): string =>
  rect({ x: LEFT, y: high, width: RIGHT - LEFT, height: Math.max(THINNEST, low - high) }, BAND);

/** With some room around; values that are all the same get a range too. */
function rangeOf(values: readonly number[]): { low: number; high: number } {
  const least = Math.min(...values);
  const most = Math.max(...values);
  const room = Math.max((most - least) * 0.15, Math.abs(most) * 0.01, 0.01);
  return { low: least - room, high: most + room };
}

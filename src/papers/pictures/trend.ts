// Values over time, the oldest at the left, with the band in which their mean lies and a line that they are held against.
import type { Trend } from '../../app/ports/paper.ts';
import { BAND, GRID, TONES } from './palette.ts';
import { type Block, dot, line, MARGIN, rect, RIGHT, text } from './svg.ts';

const HIGH = 320;
const LEFT = MARGIN + 120;
const NOTE = 44;

export function trend({ points, band, mark, notes = [], tick }: Trend, top: number): Block {
  const { low, high } = rangeOf([
    ...points.map(({ value }) => value),
    ...(band ? [band.low, band.high] : []),
    ...(mark === undefined ? [] : [mark]),
  ]);
  const yOf = (value: number): number => top + 12 + HIGH * (1 - (value - low) / (high - low));
  const xOf = (at: number): number =>
    points.length === 1 ? (LEFT + RIGHT) / 2 : LEFT + 20 + ((RIGHT - LEFT - 40) * at) / (points.length - 1);
  const across = (value: number) => [[LEFT, yOf(value)], [RIGHT, yOf(value)]] as const; // prettier-ignore
  const where = points.map(({ value }, at) => [xOf(at), yOf(value)] as const);
  const below = top + HIGH + 52;
  const told = [...(band === undefined ? [] : [band.text]), ...notes];
  const svg = [
    band === undefined ? '' : shade(yOf(band.high), yOf(band.low)),
    ...ticksIn(low, high).flatMap((value) => [
      line(across(value), GRID),
      text(LEFT - 12, yOf(value) + 9, tick(value), { size: 24, anchor: 'end', width: LEFT - 12 }),
    ]),
    mark === undefined ? '' : line(across(mark), TONES.other, { width: 4, dashed: true }),
    line(where, TONES.plain, { width: 3 }),
    ...where.map(([x, y]) => dot(x, y, TONES.plain)),
    ...ends(points, below),
    ...told.map((words, at) => text(MARGIN, below + NOTE * (at + 1), words, { size: 24, faint: true })),
  ];
  return { svg: svg.join(''), height: HIGH + 76 + told.length * NOTE };
}

/** The dates of the first and of the last. */
function ends(points: Trend['points'], y: number): readonly string[] {
  const width = (RIGHT - LEFT) / 2;
  const first = text(LEFT, y, points[0]?.label ?? '', { size: 24, width });
  const last = text(RIGHT, y, points.at(-1)?.label ?? '', { size: 24, anchor: 'end', width });
  return points.length > 1 ? [first, last] : [first];
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

const STEPS = [1, 2, 2.5, 5, 10];
const FEWEST_STEPS = 3;

/** Round values, a handful of them. */
export function ticksIn(low: number, high: number): readonly number[] {
  const most = (high - low) / FEWEST_STEPS;
  const power = 10 ** Math.floor(Math.log10(most));
  const step = (STEPS.findLast((each) => each * power <= most) ?? 1) * power;
  const first = Math.ceil(low / step);
  return Array.from({ length: Math.floor(high / step) - first + 1 }, (_, at) => (first + at) * step);
}

// Bars below each other: the name and the amount over each.
import type { DrawnBar } from '../app/ports/paper.ts';
import { GRID, TONES } from './palette.ts';
import { type Block, MARGIN, rect, RIGHT, text } from './svg.ts';

const ROW = 78;
const THICK = 28;
const ACROSS = RIGHT - MARGIN;
const LABEL_SHARE = 0.55;

/** All by one measure: the longest fills the width. */
export function bars(all: readonly DrawnBar[], top: number): Block {
  const longest = Math.max(...all.map(({ value }) => value));
  const rows = all.map(({ label, text: amount, value, tone }, at) => {
    const y = top + at * ROW;
    const share = longest > 0 ? Math.max(0, value) / longest : 0;
    return [
      text(MARGIN, y + 26, label, { width: ACROSS * LABEL_SHARE }),
      text(RIGHT, y + 26, amount, { anchor: 'end', bold: true, width: ACROSS * (1 - LABEL_SHARE) }),
      rect(MARGIN, y + 36, ACROSS, THICK, GRID),
      rect(MARGIN, y + 36, ACROSS * share, THICK, TONES[tone]),
    ].join('');
  });
  return { svg: rows.join(''), height: all.length * ROW };
}

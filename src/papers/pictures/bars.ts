// Bars below each other: the name and the amount over each.
import type { Bars } from '../../app/ports/paper.ts';
import { GRID, TONES } from './palette.ts';
import { type Block, MARGIN, rect, RIGHT, text, widthOf } from './svg.ts';

const ROW = 78;
const THICK = 28;
const ACROSS = RIGHT - MARGIN;
/** The amount is never cut for its label's sake: of a long one the label has what is left. */
const LEAST_LABEL = ACROSS * 0.3;

/** All by one measure. More than the whole is not drawn beyond it: the amount tells. */
export function bars({ bars: all, of }: Bars, top: number): Block {
  const whole = of ?? Math.max(...all.map(({ value }) => value));
  const rows = all.map(({ label, text: amount, value, tone }, at) => {
    const y = top + at * ROW;
    const share = whole > 0 ? Math.min(1, Math.max(0, value) / whole) : 0;
    const wide = Math.min(widthOf(amount, { bold: true }), ACROSS - LEAST_LABEL);
    return [
      text(MARGIN, y + 26, label, { width: ACROSS - wide }),
      text(RIGHT, y + 26, amount, { anchor: 'end', bold: true, width: wide }),
      rect({ x: MARGIN, y: y + 36, width: ACROSS, height: THICK }, GRID),
      rect({ x: MARGIN, y: y + 36, width: ACROSS * share, height: THICK }, TONES[tone]),
    ].join('');
  });
  return { svg: rows.join(''), height: all.length * ROW };
}

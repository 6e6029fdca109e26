// Colours that people tell apart whatever colours they see: M. Okabe and K. Ito, "Color Universal Design" (2008), of which those are
// taken that stand out from white by 3 : 1 (WCAG 2.2, 1.4.11). Beside each bar stands its name: no colour tells anything alone.
import type { Tone } from '../../core/paper.ts';

export const TONES: Readonly<Record<Tone, string>> = {
  portions: '#0072B2',
  byproduct: '#009E73',
  waste: '#D55E00',
  loss: '#000000',
  plain: '#0072B2',
  other: '#D55E00',
};

export const PAPER = '#FFFFFF';
export const INK = '#1A1A1A';
export const FAINT_INK = '#595959';
export const GRID = '#D9D9D9';
/** Sky blue of the same palette, thinned: the band lies behind a line that stands out by itself. */
export const BAND = '#CFE8F7';

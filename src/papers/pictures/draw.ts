// A picture as PNG: its panels below each other as SVG, drawn with a font that comes along.
import { createRequire } from 'node:module';
import { Resvg } from '@resvg/resvg-js';
import type { DrawnPanel, Picture } from '../../app/ports/paper.ts';
import { bars } from './bars.ts';
import { PAPER } from './palette.ts';
import { type Block, FONT, MARGIN, text, WIDTH } from './svg.ts';
import { trend } from './trend.ts';

const { resolve } = createRequire(import.meta.url);

/** resvg draws no text at all with woff or woff2, and says nothing: these are TrueType. */
const FONT_FILES = ['DejaVuSans.ttf', 'DejaVuSans-Bold.ttf'].map((file) =>
  resolve(`dejavu-fonts-ttf/ttf/${file}`),
);

export function draw(picture: Picture, fontFiles: readonly string[] = FONT_FILES): Uint8Array {
  const font = { fontFiles: [...fontFiles], loadSystemFonts: false, defaultFontFamily: FONT };
  return new Resvg(svgOf(picture), { font }).render().asPng();
}

/** The whole picture as SVG. */
export function svgOf({ title, panels }: Picture): string {
  const parts = [text(MARGIN, 62, title, { size: 34, bold: true })];
  let y = 92;
  for (const panel of panels) {
    parts.push(text(MARGIN, y + 40, panel.title, { size: 28, faint: true }));
    const block = drawn(panel, y + 62);
    parts.push(block.svg);
    y += 62 + block.height + 24;
  }
  const size = `width="${WIDTH}" height="${y}"`;
  return `<svg xmlns="http://www.w3.org/2000/svg" ${size}><rect ${size} fill="${PAPER}"/>${parts.join('')}</svg>`;
}

function drawn(panel: DrawnPanel, top: number): Block {
  switch (panel.is) {
    case 'bars':
      return bars(panel, top);
    case 'trend':
      return trend(panel, top);
  }
}

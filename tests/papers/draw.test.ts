import { expect, it } from 'vitest';
import { inflateSync } from 'node:zlib';
import type { Picture } from '../../src/app/ports/paper.ts';
import { draw, svgOf } from '../../src/papers/pictures/draw.ts';
import { ticksIn } from '../../src/papers/pictures/trend.ts';
import { FAINT_INK, INK, PAPER, TONES } from '../../src/papers/pictures/palette.ts';

const picture: Picture = {
  title: 'ribeye <14.2 lb> & more',
  panels: [
    { is: 'bars', title: 'Where it went', of: 14.2, bars: [
      { label: 'portions', text: '11.2 lb', value: 11.2, tone: 'portions' },
      { label: 'trim', text: '1.1 lb', value: 1.1, tone: 'byproduct' },
    ] },
    { is: 'trend', title: 'Yield', points: [{ label: 'Mar 1', value: 77 }, { label: 'Mar 8', value: 79 }],
      band: { low: 76, high: 80, text: 'shaded' }, tick: (value) => value.toFixed(1) },
  ],
}; // prettier-ignore

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

/** Width, height and the inflated rows of a PNG. */
function decoded(png: Uint8Array) {
  const bytes = Buffer.from(png);
  const data: Buffer[] = [];
  for (let at = 8; at < bytes.length; at += 12 + bytes.readUInt32BE(at))
    if (bytes.toString('latin1', at + 4, at + 8) === 'IDAT')
      data.push(bytes.subarray(at + 8, at + 8 + bytes.readUInt32BE(at)));
  return {
    width: bytes.readUInt32BE(16),
    height: bytes.readUInt32BE(20),
    rows: inflateSync(Buffer.concat(data)),
  };
}

it('draws a PNG of a width for phones', () => {
  const png = draw(picture);
  expect([...png.slice(0, 8)]).toEqual(SIGNATURE);
  const { width, height, rows } = decoded(png);
  expect(width).toBe(720);
  expect(height).toBeGreaterThan(600);
  expect(rows.length % height).toBe(0);
});

it('draws the words: without a font the pixels are others', () => {
  expect(decoded(draw(picture)).rows.equals(decoded(draw(picture, [])).rows)).toBe(false);
  const noWords = { ...picture, title: '' };
  expect(decoded(draw(picture)).rows.equals(decoded(draw(noWords)).rows)).toBe(false);
});

it('is SVG whatever the words hold', () => {
  expect(svgOf(picture)).toContain('ribeye &lt;14.2 lb&gt; &amp; more');
  expect(() => draw({ title: '\u0000]]>"\uD800', panels: [] })).not.toThrow();
});

it('cuts a long label, and no amount', () => {
  const bar = {
    label: 'a part with a very long name that goes on and on',
    text: '10.52 lb · 76.2 %',
    value: 1,
    tone: 'waste',
  } as const;
  const svg = svgOf({ title: '', panels: [{ is: 'bars', title: '', bars: [bar] }] });
  expect(svg).toContain('10.52 lb · 76.2 %');
  expect(svg).toMatch(/a part with a very[^<]*…/);
});

it('draws what values are held against as a dashed line, and what is noted below', () => {
  const trend = {
    is: 'trend',
    title: '',
    points: [{ label: 'x', value: 9 }],
    mark: 12,
    notes: ['Dashed: 12'],
    tick: String,
  } as const;
  const svg = svgOf({ title: '', panels: [trend] });
  expect(svg).toMatch(/stroke-dasharray/);
  expect(svg).toContain('Dashed: 12');
});

it.each([
  [72.8, 79.3, [74, 76, 78]],
  [9.99, 11.09, [10, 10.25, 10.5, 10.75, 11]],
  [-0.01, 0.01, [-0.01, -0.005, 0, 0.005, 0.01]],
])('marks round values between %d and %d', (low, high, expected) => {
  const found = ticksIn(low, high);
  expect(found).toHaveLength(expected.length);
  for (const [at, value] of found.entries()) expect(value).toBeCloseTo(expected[at] ?? NaN, 9);
});

it('draws what is all the same, alone, or nothing', () => {
  const trend = { is: 'trend', title: '', tick: String } as const;
  const bars = { is: 'bars', title: '', bars: [{ label: '', text: '', value: 0, tone: 'loss' }] } as const;
  const alone = { ...trend, points: [{ label: 'x', value: 77 }] };
  const same = { ...trend, points: [{ label: 'x', value: 0 }, { label: 'y', value: 0 }] }; // prettier-ignore
  expect(svgOf({ title: '', panels: [alone, same, bars] })).not.toMatch(/NaN|Infinity/);
});

/** Relative luminance and contrast by WCAG 2.2. */
function contrast(one: string, other: string): number {
  const luminance = (colour: string): number => {
    const [red = 0, green = 0, blue = 0] = [1, 3, 5]
      .map((at) => parseInt(colour.slice(at, at + 2), 16) / 255)
      .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  };
  const [dark = 0, light = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
}

it('knows the contrast of black and white', () => {
  expect(contrast('#000000', '#FFFFFF')).toBeCloseTo(21, 6);
});

it.each(Object.entries(TONES))('sets %s off from the paper by 3 : 1 (WCAG 2.2, 1.4.11)', (_, colour) => {
  expect(contrast(colour, PAPER)).toBeGreaterThanOrEqual(3);
});

it.each([INK, FAINT_INK])('sets words in %s off from the paper by 7 : 1 (WCAG 2.2, 1.4.6)', (colour) => {
  expect(contrast(colour, PAPER)).toBeGreaterThanOrEqual(7);
});

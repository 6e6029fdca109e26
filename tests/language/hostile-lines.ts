// Lines that nobody means well with: noise, soup of known words, good lines with faults in them.
import { type Draw, pick, times } from './seeded.ts';
import { rowFiles, textOf } from './rows.ts';

const GOOD = rowFiles()
  .filter(({ name }) => !name.endsWith('/known-failing'))
  .flatMap(({ rows }) => rows.map(textOf))
  .filter((text) => text !== '');
const WORDS = [...new Set(GOOD.flatMap((text) => text.split(/\s+/)))];
const NUMBER_WORDS = ['one', 'two', 'four', 'eight', 'ten', 'fourteen', 'sixteen', 'twenty', 'ninety', 'hundred', 'thousand', 'half', 'quarter', 'three quarters', 'and', 'a', 'point', 'oh', 'dozen', 'won', 'ate', 'for', 'to']; // prettier-ignore

const NASTY = [
  '\u202e', '\u200f', '\u200b', '\u200d', '\ufeff', '\u0000', '\u0007', '\u001b[31m', '\ud800', '\udfff', '\u0301', '\u0489',
  '１４．２', '①', '²', '½', '⅞', '٣', '१४', 'Ⅻ', '∞', '−', '‐', '…', '👍🏽', '🥩',
  '__proto__', 'constructor', 'toString', 'hasOwnProperty', 'prototype', 'valueOf',
  '<b>', '</script><script>alert(1)</script>', '&lt;', '{weight}', '{ $slot }', '${1+1}', '%s', '%d', '%00', '\\u0031', '[', ']]', '((', '|',
  "'; drop table tests; --", '"', '`', '*_~', '@everyone', 'https://example.com/14.2', '1e9', '0x10', '1_000', 'NaN', 'Infinity', '-0', '--1', '1/0', '..', ',,', '.5.', '9'.repeat(400),
]; // prettier-ignore

type Make = (draw: Draw) => string;

const bytes: Make = (draw) =>
  Buffer.from(times(1 + draw(80), () => draw(256))).toString(pick(draw, ['utf8', 'latin1'] as const));
const codePoints: Make = (draw) =>
  times(1 + draw(40), () => String.fromCodePoint(draw(pick(draw, [128, 0x3000, 0x11_0000])))).join('');
const soup: Make = (draw) => times(1 + draw(12), () => pick(draw, WORDS)).join(' ');
const numberSoup: Make = (draw) =>
  `${pick(draw, WORDS)} ${times(1 + draw(14), () => pick(draw, NUMBER_WORDS)).join(' ')}`;
const figure: Make = (draw) =>
  pick(draw, [
    `${draw(100)}`,
    `${draw(30)}.${draw(10)}`,
    `${draw(20)},${draw(1000)}`,
    `-${draw(9)}`,
    `${draw(9)}/${draw(9)}`,
    `${draw(1e9)}`,
  ]);
const figureSoup: Make = (draw) =>
  times(1 + draw(8), () => (draw(2) === 0 ? figure(draw) : pick(draw, WORDS))).join(
    pick(draw, [' ', ', ', '']),
  );
const two: Make = (draw) =>
  `${pick(draw, GOOD)}${pick(draw, [' ', ', ', '. ', ' and ', '\n'])}${pick(draw, GOOD)}`;
const nastyWithin: Make = (draw) => {
  const good = pick(draw, GOOD);
  const at = draw(good.length + 1);
  return good.slice(0, at) + pick(draw, NASTY) + good.slice(at);
};
const long: Make = (draw) =>
  pick(draw, [pick(draw, GOOD), pick(draw, WORDS), pick(draw, NASTY)])
    .concat(pick(draw, ['', ' ', ', ']))
    .repeat(1 + draw(300));

/** One to three slips in the letters of a good line. */
const letters: Make = (draw) =>
  times(1 + draw(3), () => draw(4)).reduce(
    (text, slip) => {
      const at = draw(text.length + 1);
      const [before, char, after] = [text.slice(0, at), text.slice(at, at + 1), text.slice(at + 1)];
      if (slip === 0) return before + after;
      if (slip === 1) return before + char + char + after;
      if (slip === 2) return before + String.fromCharCode(32 + draw(95)) + char + after;
      return before + after.slice(0, 1) + char + after.slice(1);
    },
    pick(draw, GOOD),
  );

/** A word of a good line lost, doubled, moved or put in from elsewhere. */
const words: Make = (draw) => {
  const said = pick(draw, GOOD).split(' ');
  const at = draw(said.length);
  const word = said[at] ?? '';
  const change = draw(4);
  if (change === 0) said.splice(at, 1);
  if (change === 1) said.splice(at, 0, word);
  if (change === 2) said.splice(draw(said.length), 0, ...said.splice(at, 1));
  if (change === 3) said.splice(at, 0, pick(draw, WORDS));
  return said.join(' ');
};

const KINDS: readonly (readonly [weight: number, make: Make])[] = [
  [8, bytes], [8, codePoints], [14, soup], [10, numberSoup], [12, figureSoup], [10, two], [12, nastyWithin], [1, long], [15, letters], [10, words],
]; // prettier-ignore
const BAG = KINDS.flatMap(([weight, make]) => times(weight, () => make));

/** The next line. */
export const hostileLine: Make = (draw) => pick(draw, BAG)(draw);

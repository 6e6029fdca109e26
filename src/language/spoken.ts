// A written reply as it is read out: figures, units and money as a cook says them. What a voice makes of plain words and
// whole numbers is its own.
import { join } from 'node:path';
import { z } from 'zod';
import { readData } from './language.ts';

const oneAndMany = z.tuple([z.string(), z.string()]);

const speakingSchema = z.strictObject({
  units: z.record(z.string(), oneAndMany),
  per: z.strictObject({ word: z.string(), units: z.record(z.string(), z.string()) }),
  point: z.string(),
  minus: z.string(),
  plus: z.string(),
  money: z.record(z.string(), z.strictObject({ whole: oneAndMany, part: oneAndMany })),
  words: z.record(z.string(), z.string()),
});

export type Speaking = z.output<typeof speakingSchema>;

/** Reads it from the folder of a language. Throws a DataFault that names file and line where it is wrong. */
export const loadSpeaking = (folder: string, code: string): Speaking =>
  readData(join(folder, code, 'speaking.yaml'), speakingSchema);

const FIGURE = /([+-]?)(\p{Sc}?)(\d[\d,]*)(?:\.(\d+))?(?: ?(lb|kg|oz|g|%)(?![a-z]))?(?:\/(lb|kg))?/gu;

export function spoken(speaking: Speaking, text: string): string {
  const figures = text.replace(FIGURE, (...found) =>
    figureSaid(speaking, found.slice(1, 7) as unknown as Figure),
  );
  const words = Object.entries(speaking.words).reduce(
    (said, [from, to]) => said.replaceAll(from, to),
    figures,
  );
  return words
    .replace(/([.:!?]?)\s*\n\s*/g, (_, end: string) => `${end === '' ? '.' : end} `)
    .replace(/[ \t]+/g, ' ')
    .trim();
}

type Figure = readonly [
  sign: string,
  money: string,
  whole: string,
  part?: string,
  unit?: string,
  per?: string,
];

function figureSaid(speaking: Speaking, [sign, money, grouped, part, unit, per]: Figure): string {
  const whole = grouped.replaceAll(',', '');
  const signed = sign === '' ? '' : `${sign === '-' ? speaking.minus : speaking.plus} `;
  const said = moneySaid(speaking, money, whole, part) ?? `${money}${pointed(speaking, whole, part)}`;
  const [one, many] = speaking.units[unit ?? ''] ?? ['', ''];
  const behind = unit === undefined ? '' : ` ${whole === '1' && part === undefined ? one : many}`;
  const each = per === undefined ? '' : ` ${speaking.per.word} ${speaking.per.units[per] ?? per}`;
  return `${signed}${said}${behind}${each}`;
}

/** Digits behind the point are said one by one. */
const pointed = ({ point }: Speaking, whole: string, part?: string): string =>
  part === undefined ? whole : `${whole} ${point} ${part.split('').join(' ')}`;

/** "7 dollars 40": only amounts in whole hundredths; a price with more digits is read like a number. */
function moneySaid(speaking: Speaking, sign: string, whole: string, part?: string): string | undefined {
  const names = speaking.money[sign];
  if (names === undefined) return undefined;
  if (part !== undefined && part.length !== 2) return `${pointed(speaking, whole, part)} ${names.whole[1]}`;
  const cents = Number(part ?? '0');
  if (whole === '0' && cents > 0) return `${cents} ${names.part[cents === 1 ? 0 : 1]}`;
  const dollars = `${whole} ${names.whole[whole === '1' ? 0 : 1]}`;
  return cents === 0
    ? dollars
    : `${dollars} ${cents < 10 ? `${cents} ${names.part[cents === 1 ? 0 : 1]}` : cents}`;
}

// Which numbers stand in a line, seen by other eyes than the program's: digits, number words, and words that can mean one.

const SMALL = 'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty thirty forty fifty sixty seventy eighty ninety fourty nought naught fife niner'; // prettier-ignore
const LARGE = 'hundred thousand grand dozen';
const SHARES = 'half halves quarter quarters third thirds eighth eighths tenth tenths sixteenth sixteenths';
const SOUNDS = 'point dot oh o won ate fore for to too';
const NUMBER_WORDS = new Set([SMALL, LARGE, SHARES, SOUNDS].join(' ').split(' '));

/** The word with a letter missing, doubled or swapped with the next: a reader sees "another" in "aother" too. */
const slipsOf = (word: string): readonly string[] =>
  word.split('').flatMap((letter, at) => {
    const [before, behind] = [word.slice(0, at), word.slice(at + 1)];
    return [
      before + behind,
      before + letter + letter + behind,
      before + behind.slice(0, 1) + letter + behind.slice(1),
    ];
  });
const ONE = new Set(['a', 'an', 'another', ...slipsOf('another')]);

/** As a reader sees it: full-width digits plain, invisible marks and accents gone. */
const seen = (line: string): string =>
  line.normalize('NFKC').replace(/[\p{Cf}\p{Cc}]/gu, (mark) => (mark === '\n' || mark === '\t' ? ' ' : '')).normalize('NFD').replace(/\p{M}/gu, '').replace(/(?<=\p{L})['’‘`´](?=\p{L})/gu, '').toLowerCase(); // prettier-ignore

const wordsOf = (line: string): readonly string[] => seen(line).match(/\p{L}+/gu) ?? [];
const isNumberWord = (word: string): boolean =>
  [word, word.replace(/s$/, ''), word.replace(/es$/, '')].some((form) => NUMBER_WORDS.has(form));

/** How many numbers the line could hold at most: runs of digits, number words, articles that mean one. */
export const mostNumbersIn = (line: string): number =>
  (seen(line).match(/\d+/g) ?? []).length +
  wordsOf(line).filter((word) => isNumberWord(word) || ONE.has(word)).length;

/** The figures of a line that has plain figures and no number words; an article adds a 1. Undefined of any other line. */
export function figuresIn(line: string): readonly number[] | undefined {
  if (wordsOf(line).some(isNumberWord)) return undefined;
  const runs = seen(line).match(/[\d.,/⁄]*\d[\d.,/⁄]*/g) ?? [];
  const figures = runs.map((run) => run.replace(/[.,]+$/, ''));
  if (!figures.every((run) => /^(\d+(\.\d+)?|\.\d+)$/.test(run))) return undefined;
  return [...figures.map(Number), ...(wordsOf(line).some((word) => ONE.has(word)) ? [1] : [])];
}

const LB = 453.59237;
/** What one of a spoken unit can be in the unit of a slot: weights in lb and oz, prices per lb, hours, cents. */
const FACTORS = [
  1,
  1 / 16,
  16,
  1000 / LB,
  1 / LB,
  (1000 * 16) / LB,
  16 / LB,
  LB / 1000,
  LB,
  60,
  0.01,
  0.01 * 16,
  (0.01 * LB) / 1000,
];

const near = (a: number, b: number): boolean => Math.abs(a - b) <= Math.abs(b) * 1e-7;

/** Whether an amount is one of the figures in some unit, or two of them added up ("2 lb 6 oz"). */
export function comesFrom(amount: number, figures: readonly number[]): boolean {
  const parts = figures.flatMap((figure) => FACTORS.map((factor) => figure * factor));
  return parts.some((part) => near(part, amount) || parts.some((other) => near(part + other, amount)));
}

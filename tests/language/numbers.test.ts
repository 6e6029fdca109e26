// Spoken numbers against an independent speller, both ways: what it spells is read as that number, and the number in
// figures is read as what was spelled.
import { expect, test } from 'vitest';
import { judge } from './english.ts';
import { amountRead, type Case, expectAllRead } from './heard.ts';
import { digitByDigit, range, spell, spellOtherwise, twoDigits, withAnd } from './spelling.ts';

const GRAM_IN_LB = 1 / 453.59237;
const OUNCE_IN_LB = 1 / 16;
const grams = { kind: 'weigh', slot: 'weightLb', scale: GRAM_IN_LB };
const pounds = { kind: 'weigh', slot: 'weightLb' };
const readyCut = { kind: 'readyCut', slot: 'pricePerLb' };

test('whole numbers from 1 to 9,999', () => {
  expectAllRead(
    range(1, 9999).map((amount) => ({ line: `trim ${spell(amount)} grams`, amount })),
    grams,
  );
});

test('whole numbers from 100 to 9,999 with "and" after the hundreds', () => {
  const cases = range(100, 9999).flatMap((amount): Case[] => {
    const words = withAnd(spell(amount));
    return words === spell(amount) ? [] : [{ line: `trim ${words} grams`, amount }];
  });
  expectAllRead(cases, grams);
});

test('a number in words and the same in figures give one entry, to the last digit', () => {
  const differ = range(1, 9999).filter(
    (amount) =>
      JSON.stringify(judge(`trim ${spell(amount)} grams`)) !== JSON.stringify(judge(`trim ${amount} grams`)),
  );
  expect(differ).toEqual([]);
});

test('a second speller and the first agree from 0 to 1,000, and so does the reader', () => {
  const agreed = range(0, 1000).filter((amount) => spell(amount) === spellOtherwise(amount));
  expect(agreed.length).toBeGreaterThan(900);
  expectAllRead(
    agreed
      .filter((amount) => amount > 0)
      .map((amount) => ({ line: `trim ${spellOtherwise(amount)} grams`, amount })),
    grams,
  );
});

test('no weight is zero', () => {
  expect(amountRead(`trim ${spell(0)} grams`, grams)).not.toBe(0);
});

/** Every amount of two decimals from 0.01 to 99.99, spelled by the given rule. */
const hundredths = (spelled: (whole: number, decimals: string) => string | undefined): readonly Case[] =>
  range(1, 9999).flatMap((amount): Case[] => {
    const words = spelled(Math.floor(amount / 100), twoDigits(amount % 100));
    return words === undefined ? [] : [{ line: `trim ${words}`, amount: amount / 100 }];
  });

test('two decimals digit by digit', () => {
  expectAllRead(
    hundredths((whole, decimals) => `${spell(whole)} point ${digitByDigit(decimals)}`),
    pounds,
  );
});

test('two decimals digit by digit, with "oh" for zero', () => {
  expectAllRead(
    hundredths((whole, decimals) =>
      decimals.includes('0') ? `${spell(whole)} point ${digitByDigit(decimals, 'oh')}` : undefined,
    ),
    pounds,
  );
});

test('two decimals as a number of two digits', () => {
  expectAllRead(
    hundredths((whole, decimals) =>
      decimals.startsWith('0') ? undefined : `${spell(whole)} point ${spell(Number(decimals))}`,
    ),
    pounds,
  );
});

test('below one, without the zero', () => {
  expectAllRead(
    range(1, 99).map((amount) => ({
      line: `trim point ${digitByDigit(twoDigits(amount))}`,
      amount: amount / 100,
    })),
    pounds,
  );
});

test('one decimal, from a digit or a teen without its point', () => {
  const cases = range(1, 19).flatMap((whole) =>
    range(1, 9).map((digit) => ({
      line: `trim ${spell(whole)} ${spell(digit)}`,
      amount: whole + digit / 10,
    })),
  );
  expectAllRead(cases, pounds);
});

test('halves, quarters and eighths', () => {
  const shares = { 'a half': 0.5, 'a quarter': 0.25, 'three quarters': 0.75, 'an eighth': 0.125, 'three eighths': 0.375, 'five eighths': 0.625, 'seven eighths': 0.875 }; // prettier-ignore
  const cases = Object.entries(shares).flatMap(([share, part]) =>
    range(1, 99).map((whole) => ({ line: `trim ${spell(whole)} and ${share} pounds`, amount: whole + part })),
  );
  expectAllRead(cases, pounds);
});

test('pounds and ounces', () => {
  const cases = range(1, 40).flatMap((whole) =>
    range(1, 15).flatMap((ounces) => {
      const amount = whole * 16 + ounces;
      const [lb, oz] = [spell(whole), spell(ounces)];
      return [`${lb} pounds ${oz} ounces`, `${lb} pounds and ${oz} ounces`, `${lb} pound ${oz}`].map((words) => ({ line: `trim ${words}`, amount })); // prettier-ignore
    }),
  );
  expectAllRead(cases, { ...pounds, scale: OUNCE_IN_LB });
});

/** Every price from 1.00 to 99.99, spelled by the given rule. */
const prices = (spelled: (dollars: number, cents: number) => string | undefined): readonly Case[] =>
  range(100, 9999).flatMap((amount): Case[] => {
    const words = spelled(Math.floor(amount / 100), amount % 100);
    return words === undefined ? [] : [{ line: `ready cut ${words}`, amount: amount / 100 }];
  });

test('dollars and cents', () => {
  expectAllRead(
    prices((dollars, cents) =>
      cents === 0 ? `${spell(dollars)} dollars` : `${spell(dollars)} dollars and ${spell(cents)} cents`,
    ),
    readyCut,
  );
});

test('prices as two numbers: "seven forty"', () => {
  expectAllRead(
    prices((dollars, cents) => (cents < 10 ? undefined : `${spell(dollars)} ${spell(cents)}`)),
    readyCut,
  );
});

test('prices with "oh": "seven oh five"', () => {
  expectAllRead(
    prices((dollars, cents) =>
      cents === 0 || cents > 9 ? undefined : `${spell(dollars)} oh ${spell(cents)}`,
    ),
    readyCut,
  );
});

test('prices digit by digit behind a point', () => {
  expectAllRead(
    prices((dollars, cents) => `${spell(dollars)} point ${digitByDigit(twoDigits(cents), 'oh')}`),
    readyCut,
  );
});

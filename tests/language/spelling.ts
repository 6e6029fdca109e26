// Numbers in words as a recogniser writes them (lower case, no punctuation), spelled by two independent programs.
import numberToWords from 'number-to-words';
import { ToWords } from 'to-words';

const other = new ToWords({ localeCode: 'en-US' });

const asHeard = (words: string): string =>
  words.toLowerCase().replace(/[-,]/g, ' ').replace(/\s+/g, ' ').trim();

/** "one thousand two hundred thirty four". */
export const spell = (value: number): string => asHeard(numberToWords.toWords(value));

/** The same by the other program. */
export const spellOtherwise = (value: number): string => asHeard(other.convert(value));

/** "one thousand two hundred and thirty four", as many people say it. */
export const withAnd = (words: string): string => words.replace(/hundred (?=\S)/g, 'hundred and ');

/** Digits one by one: "25" is "two five", with the given word for 0. */
export const digitByDigit = (digits: string, zero = 'zero'): string =>
  Array.from(digits, (digit) => (digit === '0' ? zero : spell(Number(digit)))).join(' ');

export const range = (from: number, to: number): readonly number[] =>
  Array.from({ length: to - from + 1 }, (_, index) => from + index);

/** Two digits, as cents and hundredths have. */
export const twoDigits = (value: number): string => String(value).padStart(2, '0');

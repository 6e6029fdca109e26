// A reply as it is read out: as a cook says it.
import { expect, it } from 'vitest';
import { spoken } from '../../src/language/spoken.ts';
import { speaking } from '../speech/given.ts';

it.each([
  ['trim 1.1 lb, 7.7 %, 13.1 lb to go', 'trim 1 point 1 pounds, 7 point 7 percent, 13 point 1 pounds to go'],
  ['fat 1 lb', 'fat 1 pound'],
  ['fat 2 lb', 'fat 2 pounds'],
  ['purge 0.125 lb', 'purge 0 point 1 2 5 pounds'],
  ['a portion of 16 oz', 'a portion of 16 ounces'],
  ['$8.15/lb, $109.21 in all', '8 dollars 15 per pound, 109 dollars 21 in all'],
  ['$7.40/kg', '7 dollars 40 per kilo'],
  ['$8.05', '8 dollars 5 cents'],
  ['$8.00', '8 dollars'],
  ['$1.00', '1 dollar'],
  ['$0.13 given away', '13 cents given away'],
  ['€0.01', '1 cent'],
  ['$0.125', '0 point 1 2 5 dollars'],
  ['-$0.27/lb', 'minus 27 cents per pound'],
  ['fat +0.25 lb makes 2.55 lb', 'fat plus 0 point 2 5 pounds makes 2 point 5 5 pounds'],
  ['$1,204.50', '1204 dollars 50'],
  ['1.427 × the price', '1 point 4 2 7 times the price'],
  ['ribeye closed.\n3 lb to go', 'rib eye closed. 3 pounds to go'],
  ['12 large trays, 3 grams', '12 large trays, 3 grams'],
  ['', ''],
])('"%s" is "%s"', (text, said) => {
  expect(spoken(speaking, text)).toBe(said);
});

// Figures as a person sees them: rounded half-up and once, in the units and the currency of the kitchen.
import { describe, expect, test } from 'vitest';
import { decimal } from '../../src/core/decimal.ts';
import { toGrams } from '../../src/core/quantity.ts';
import { date, list, money, name, number, percent, price, type ReplyValue, say, sayCost, size, weight } from '../../src/core/reply.ts'; // prettier-ignore
import { type Reader, renderer } from '../../src/language/render.ts';

const WORDING = `
plain = { $it }
cost = costs { $it }
nothing = { "" }
`;
const render = renderer('en', WORDING);
const cook: Reader = { unit: 'lb', currency: 'USD', timezone: 'America/Chicago', seesCosts: true };
const inKilos: Reader = { ...cook, unit: 'kg', currency: 'EUR' };

const shown = (it: ReplyValue, reader = cook): string => render([say('plain', { it })], reader);
const d = decimal;
const lb = (figure: string): ReplyValue => weight(toGrams(d(figure), 'lb'));

describe('a share in percent, to one place, half-up', () => {
  test.each([
    ['7.746478873', '7.7 %'],
    ['7.75', '7.8 %'],
    ['7.749999', '7.7 %'],
    ['78.87', '78.9 %'],
    ['0.05', '0.1 %'],
    ['100', '100 %'],
    ['-2.25', '-2.3 %'],
  ])('%s', (value, text) => {
    expect(shown(percent(d(value)))).toBe(text);
  });
});

describe('money to the cent, half-up', () => {
  test.each([
    ['105.08', '$105.08'],
    ['9.5', '$9.50'],
    ['9', '$9.00'],
    ['9.38214', '$9.38'],
    ['9.3850001', '$9.39'],
    ['9.3849999', '$9.38'],
    ['0.125', '$0.13'],
    ['-1.235', '-$1.24'],
    ['1234567.891', '$1234567.89'],
  ])('%s', (value, text) => {
    expect(shown(money(d(value)))).toBe(text);
  });
});

describe('a weight as it was said, else to hundredths of a pound', () => {
  test.each([
    ['1.1', '1.1 lb'],
    ['2.375', '2.375 lb'],
    ['12', '12 lb'],
    ['1.40625', '1.41 lb'],
    ['1.23456', '1.23 lb'],
    ['1.2351', '1.24 lb'],
  ])('%s', (value, text) => {
    expect(shown(lb(value))).toBe(text);
  });

  test('half-up happens once: 1.2449 is not 1.245 first', () => {
    expect(shown(lb('1.24496'))).toBe('1.24 lb');
  });
});

test('a portion is in ounces', () => {
  expect(shown(size(toGrams(d('1'), 'lb')))).toBe('16 oz');
  expect(shown(size(toGrams(d('15.9333333'), 'oz')))).toBe('15.93 oz');
});

describe('a kitchen in kilograms', () => {
  test('weighs in kilograms to the gram', () => {
    expect(shown(weight(d('640')), inKilos)).toBe('0.64 kg');
    expect(shown(lb('1'), inKilos)).toBe('0.454 kg');
  });

  test('has portions in grams', () => {
    expect(shown(size(d('340')), inKilos)).toBe('340 g');
    expect(shown(size(toGrams(d('12'), 'oz')), inKilos)).toBe('340.2 g');
  });

  test('has prices per kilogram, in its currency', () => {
    expect(shown(price(d('8.15')), inKilos)).toBe('€17.97/kg');
  });
});

test('a price is per pound where pounds are weighed', () => {
  expect(shown(price(d('7.4')))).toBe('$7.40/lb');
});

test('a currency without a sign of its own has its code, apart from the figure', () => {
  expect(shown(money(d('12.5')), { ...cook, currency: 'CHF' })).toBe('CHF 12.50');
});

test('a number has the places that it asks for', () => {
  expect(shown(number(d('1.2345'), 2))).toBe('1.23');
  expect(shown(number(d('1.235'), 2))).toBe('1.24');
});

test('a day is that of the kitchen, not of the server', () => {
  expect(shown(date('2026-03-07T03:00:00Z'))).toBe('Mar 6');
  expect(shown(date('2026-03-07T03:00:00Z'), { ...cook, timezone: 'Asia/Tokyo' })).toBe('Mar 7');
});

describe('costs', () => {
  const cutter: Reader = { ...cook, seesCosts: false };
  const replies = [say('plain', { it: name('trim') }), sayCost('cost', { it: money(d('9.5')) })];

  test('are told to those who may see them', () => {
    expect(render(replies, cook)).toBe('trim\ncosts $9.50');
  });

  test('are left out for others, without an empty line', () => {
    expect(render(replies, cutter)).toBe('trim');
  });

  test('are left out within a list, too', () => {
    expect(render([say('plain', { it: list(replies) })], cook)).toBe('trim, costs $9.50');
    expect(render([say('plain', { it: list(replies) })], cutter)).toBe('trim');
  });
});

test('a message that says nothing makes no line', () => {
  expect(render([say('nothing'), say('plain', { it: 'x' })], cook)).toBe('x');
});

test('a message that has no wording is a fault of ours', () => {
  expect(() => render([say('unheard-of')], cook)).toThrow(/unheard-of/);
});

test('what a person typed is shown as it is, not as wording', () => {
  expect(shown(name('{ $it } <b>trim</b> %s'))).toBe('{ $it } <b>trim</b> %s');
});

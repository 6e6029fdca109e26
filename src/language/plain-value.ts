// A value of a reply for a table: a figure in the kitchen's unit that a spreadsheet can reckon with, or text.
import { type Decimal, roundTo } from '../core/decimal.ts';
import { perUnit } from '../core/money.ts';
import { fromGrams, portionUnit } from '../core/quantity.ts';
import type { ReplyValue } from '../core/reply.ts';
import type { Reader } from './render.ts';

/** More places than the eye needs, so that a sum over the table agrees with what is told. */
const PLACES = 4;

export function plainValue(value: ReplyValue, reader: Reader): { figure: string } | { text: string } {
  if (typeof value === 'number') return { figure: value.toString() };
  if (typeof value === 'string') return { text: value };
  switch (value.is) {
    case 'weight':
      return rounded(fromGrams(value.grams, reader.unit));
    case 'size':
      return rounded(fromGrams(value.grams, portionUnit(reader.unit)));
    case 'money':
      return rounded(value.amount);
    case 'price':
      return rounded(perUnit(value.perLb, reader.unit));
    case 'percent':
      return rounded(value.value);
    case 'number':
      return rounded(value.value, value.places);
    case 'name':
      return { text: value.name };
    case 'date':
    case 'moment':
      return { text: localDate(value.at, reader.timezone) };
    case 'clock':
      return { text: value.local };
    case 'temperature':
      return rounded(value.degreesF, 1);
    case 'list':
      throw new Error('a list is no value of a table');
  }
}

const rounded = (value: Decimal, places = PLACES): { figure: string } => ({
  figure: roundTo(value, places).toFixed(),
});

const days = new Map<string, Intl.DateTimeFormat>();

/** As a spreadsheet sorts it: 2026-03-06. */
function localDate(at: string, timeZone: string): string {
  const format =
    days.get(timeZone) ??
    new Intl.DateTimeFormat('en-CA', { year: 'numeric', month: '2-digit', day: '2-digit', timeZone });
  days.set(timeZone, format);
  return format.format(new Date(at));
}

// What an answer makes of a standing question.
import type { BareNumber, Entry } from '../core/entry.ts';
import { entryJson } from '../core/entry-json.ts';
import type { Question, Wanted } from '../core/question.ts';

/** The entry that the answer completes, a repetition of the question, its end, or nothing: the entry is no answer. */
export type Answer = { readonly is: 'entry'; readonly entry: Entry } | { readonly is: 'repeat' } | { readonly is: 'drop' } | { readonly is: 'none' };

const NONE: Answer = { is: 'none' };

export function answerTo(question: Question, entry: Entry): Answer {
  switch (entry.kind) {
    case 'yes':
      return chosen(question, 'yes');
    case 'choice':
      return chosen(question, entry.option);
    case 'no':
      return question.recorded && question.choices['no'] === undefined ? { is: 'drop' } : Object.hasOwn(question.choices, 'no') ? chosen(question, 'no') : { is: 'drop' };
    case 'amount':
      return filled(question.wants, entry.number);
    case 'name':
      return named(question.wants, entry);
    case 'undo':
      return question.recorded ? NONE : { is: 'drop' };
    default:
      return question.again !== undefined && isSame(question.again.said, entry) ? { is: 'entry', entry: question.again.accepts } : NONE;
  }
}

function chosen(question: Question, option: string): Answer {
  const entry = Object.hasOwn(question.choices, option) ? question.choices[option] : undefined;
  return entry === undefined ? { is: 'repeat' } : { is: 'entry', entry };
}

const isSame = (one: Entry, other: Entry): boolean => JSON.stringify(entryJson(one)) === JSON.stringify(entryJson(other));

/** The held entry with the number in its slot, if the number can be what the slot measures. */
function filled(wants: Wanted | undefined, number: BareNumber): Answer {
  const value = wants && measuredAs(number, wants.slot);
  return wants === undefined || value === undefined ? { is: 'repeat' } : { is: 'entry', entry: complete(wants, value) };
}

function measuredAs(number: BareNumber, slot: string): unknown {
  switch (slot) {
    case 'weight':
    case 'tare':
      return number.weight;
    case 'each':
      return number.each;
    case 'price':
    case 'credit':
      return number.price;
    case 'cost':
    case 'priceEach':
    case 'costEach':
    case 'rate':
      return number.money;
    case 'count':
    case 'pieces':
      return number.count;
    case 'minutes':
      return number.minutes;
    case 'foodCostPct':
      return number.money;
    default:
      return undefined;
  }
}

function named(wants: Wanted | undefined, entry: { readonly item?: string; readonly part?: string }): Answer {
  const value = wants?.slot === 'item' || wants?.slot === 'newItem' ? entry.item : wants?.slot === 'part' || wants?.slot === 'newPart' ? entry.part : undefined;
  return wants === undefined || value === undefined ? NONE : { is: 'entry', entry: complete(wants, value) };
}

const complete = ({ held, slot }: Wanted, value: unknown): Entry => ({ ...held, [slot]: value }) as unknown as Entry;

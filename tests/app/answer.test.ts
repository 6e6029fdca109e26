// What answers a standing question: its words, the amount or name that it asks for, the same entry again.
import { describe, expect, it } from 'vitest';
import { type Answer, answerTo } from '../../src/app/answer.ts';
import type { Entry, EntryOf } from '../../src/core/entry.ts';
import type { Question } from '../../src/core/question.ts';
import { d, lb } from '../core/given.ts';

const trim = (pounds: string): EntryOf<'weigh'> => ({
  kind: 'weigh',
  part: 'trim',
  weight: lb(pounds),
  mode: 'set',
});
const sure = (pounds: string): Entry => ({ ...trim(pounds), sure: true, test: 1 });

/** "trim 8 lb would be over half of the piece: is that right, or what does it weigh?" */
const DOUBT: Question = {
  askedAt: '2026-03-06T09:00:00Z',
  asked: { id: 'ask-over-half' },
  choices: { yes: sure('8') },
  again: { said: trim('8'), accepts: sure('8') },
  wants: { held: { kind: 'weigh', part: 'trim', mode: 'set', test: 1 }, slot: 'weight' },
  recorded: false,
  repeats: 0,
};
const answered = (entry: Entry, question = DOUBT): Answer => answerTo(question, entry, () => 'ribeye');
const amount = (pounds: string): Entry => ({
  kind: 'amount',
  number: { weight: lb(pounds), price: d(pounds) },
});

describe('the answer to a question', () => {
  it('is yes', () => {
    expect(answered({ kind: 'yes' })).toEqual({ is: 'entry', entry: sure('8') });
  });

  it('is the same entry, with the item or without', () => {
    expect(answered(trim('8'))).toEqual({ is: 'entry', entry: sure('8') });
    expect(answered({ ...trim('8'), item: 'ribeye' })).toEqual({ is: 'entry', entry: sure('8') });
    expect(answered({ ...trim('8'), item: 'striploin' })).toEqual({ is: 'none' });
  });

  it('is the amount asked for; the amount in doubt is accepted', () => {
    expect(answered(amount('0.8'))).toEqual({ is: 'entry', entry: { ...trim('0.8'), test: 1 } });
    expect(answered(amount('8'))).toEqual({ is: 'entry', entry: sure('8') });
  });

  it('is the amount after a no', () => {
    const no: Entry = { kind: 'correct', number: { weight: lb('0.8') } };
    expect(answered(no)).toEqual({ is: 'entry', entry: { ...trim('0.8'), test: 1 } });
  });

  it('is not the amount after a no where the entry is recorded: that corrects the entry', () => {
    const no: Entry = { kind: 'correct', number: { weight: lb('0.8') } };
    expect(answered(no, { ...DOUBT, recorded: true })).toEqual({ is: 'none' });
  });

  it('is no, or an undo, which drop it', () => {
    expect(answered({ kind: 'no' })).toEqual({ is: 'drop' });
    expect(answered({ kind: 'undo' })).toEqual({ is: 'drop' });
  });

  it('is not an undo of what is recorded', () => {
    expect(answered({ kind: 'undo' }, { ...DOUBT, recorded: true })).toEqual({ is: 'none' });
  });

  it('is not a yes where it is either-or: that repeats it', () => {
    expect(answered({ kind: 'yes' }, { ...DOUBT, choices: {} })).toEqual({ is: 'repeat' });
  });

  it('is not another entry', () => {
    expect(answered({ ...trim('8'), part: 'fat' })).toEqual({ is: 'none' });
  });
});

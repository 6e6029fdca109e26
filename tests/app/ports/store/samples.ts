// Turns and values to store, as small as they can be.
import type { Turn, Views } from '../../../../src/app/ports/store.ts';
import { decimal } from '../../../../src/core/decimal.ts';
import type { Fact, FactOf, Recorded } from '../../../../src/core/facts.ts';
import type { Settings } from '../../../../src/core/kitchen.ts';
import type { Ledger } from '../../../../src/core/ledger.ts';
import { EMPTY_POOL, type Pool } from '../../../../src/core/pool.ts';
import type { Question } from '../../../../src/core/question.ts';
import { list, name, say, weight } from '../../../../src/core/reply.ts';

export const AT = '2026-03-06T15:00:00.000Z';

export const SETTINGS: Settings = {
  unit: 'lb',
  currency: 'USD',
  timezone: 'America/Chicago',
  language: 'en',
  laborRatePerHour: decimal('18.50'),
  laborAvoidable: true,
};

export const NO_VIEWS: Views = { tests: [], lots: [], memory: [], pools: [], names: [] };

/** A figure that a binary float can't hold, to the last place. */
export const GRAMS = decimal('6440.123456789012345678901234567890123');

export const RECEIVED: FactOf<'received'> = {
  type: 'received',
  item: 'ribeye',
  grams: GRAMS,
  perLb: decimal('7.40'),
};
export const TRIM: FactOf<'weighed'> = {
  type: 'weighed',
  part: 'trim',
  grams: decimal('498.951607'),
  mode: 'set',
};

export const recorded = (fact: Fact, more: Partial<Recorded> = {}): Recorded => ({
  entry: 'm1.0',
  speaker: 'lead',
  at: AT,
  fact,
  ...more,
});

export const turn = (message: string, more: Partial<Turn> = {}): Turn => ({
  kitchen: 'home',
  message,
  speaker: 'lead',
  at: AT,
  text: 'trim 1.1',
  outcome: 'recorded',
  reply: 'trim 1.1 lb',
  facts: [],
  views: NO_VIEWS,
  ...more,
});

/** A turn that opens a test of an item, with its row. */
export const opening = (message: string, test: number, item = 'ribeye'): Turn =>
  turn(message, {
    facts: [recorded({ ...RECEIVED, item }, { entry: message, test, item })],
    views: { ...NO_VIEWS, tests: [{ id: test, item, status: 'open', openedAt: AT }] },
  });

export const LEDGER: Ledger = [
  { entry: 'm1.0', at: AT, value: { amount: decimal('7.40') } },
  { entry: 'm2.0', at: AT, covers: 'm1.0' },
  { entry: 'm3.0', at: AT, value: { amount: decimal('9.85'), each: decimal('9.850'), eachGrams: GRAMS } },
];

export const POOL: Pool = {
  ...EMPTY_POOL,
  tests: 3,
  receivedGrams: GRAMS,
  yields: decimal('2.123456789012345678901234567891'),
  newestClosedAt: AT,
};

export const QUESTION: Question = {
  askedAt: AT,
  asked: say('ask-replace-or-add', {
    part: name('trim'),
    before: weight(GRAMS),
    times: 2,
    of: list([say('no')]),
  }),
  choices: {
    add: { kind: 'weigh', part: 'trim', weight: GRAMS, mode: 'add' },
    no: { kind: 'no' },
  },
  wants: {
    held: { kind: 'portionWeights', eachList: [decimal('453.59237'), decimal('0.1')] },
    slot: 'item',
  },
  again: {
    said: { kind: 'correct', number: { weight: GRAMS, count: 12 } },
    accepts: { kind: 'correct', weight: GRAMS, sure: true },
  },
  recorded: false,
  repeats: 1,
};

// What food safety has a kitchen told: when, under which key, and when it stops. A fake clock: instants are passed in.
import { describe, expect, test } from 'vitest';
import { decimal } from '../../src/core/decimal.ts';
import type { Due } from '../../src/core/due.ts';
import type { Fact, LotId, Recorded } from '../../src/core/facts.ts';
import { evolveAll, type Kitchen, newKitchen } from '../../src/core/kitchen.ts';
import { lotDues, lotsWithoutPass } from '../../src/core/lot-dues.ts';

const SETTINGS = {
  unit: 'lb',
  currency: 'USD',
  timezone: 'America/Chicago',
  language: 'en',
  laborAvoidable: true,
} as const;
const at = (text: string): number => Date.parse(text);

let count = 0;
const said = (when: string, fact: Fact, lot?: LotId): Recorded => ({
  ...{ entry: `m${(count += 1)}.0`, speaker: 'ines', at: when, fact },
  ...(lot === undefined ? {} : { lot }),
});
const kitchen = (...facts: readonly Recorded[]): Kitchen => evolveAll(newKitchen(SETTINGS), facts);

const GROUND: Fact = { type: 'ground', part: 'trim', from: [] };
/** 09:00 in Chicago, in winter time. */
const NINE = '2026-03-06T15:00:00.000Z';
const cook = (degrees: string, passed: boolean): Fact => ({
  ...{ type: 'temperatureRead', what: 'burger', food: 'ground', stage: 'cook', limitF: decimal('165') },
  ...{ degreesF: decimal(degrees), passed },
});
const raw = (degrees: string, passed: boolean): Fact => ({
  ...{ type: 'temperatureRead', what: 'trim', food: 'trim', stage: 'raw', limitF: decimal('41') },
  ...{ degreesF: decimal(degrees), passed },
});

const only = (dues: readonly Due[], word: string): readonly string[] =>
  dues.filter(({ key }) => key.includes(word)).map(({ at: when }) => new Date(when).toISOString());
const keys = (dues: readonly Due[], word: string): readonly string[] =>
  dues.map(({ key }) => key).filter((key) => key.includes(word));

describe('the cook temperature of a lot', () => {
  const opened = said(NINE, GROUND, 1);

  test('is asked an hour after grinding, and on the next day at eleven local time', () => {
    const dues = lotDues(kitchen(opened), at(NINE));
    expect(only(dues, ':cook:')).toEqual(['2026-03-06T16:00:00.000Z', '2026-03-07T17:00:00.000Z']);
    expect(dues.filter(({ key }) => key.includes(':cook:')).every(({ alarm }) => alarm)).toBe(true);
  });

  test('goes on each day while the lot is open, also over the change to summer time', () => {
    const dues = lotDues(kitchen(opened), at('2026-03-08T18:00:00.000Z'));
    expect(only(dues, ':cook:')).toEqual(['2026-03-08T16:00:00.000Z', '2026-03-09T16:00:00.000Z']);
  });

  test('keeps its key whatever the clock shows', () => {
    const early = keys(lotDues(kitchen(opened), at(NINE)), ':cook:2026-03-07');
    const late = keys(lotDues(kitchen(opened), at('2026-03-07T20:00:00.000Z')), ':cook:2026-03-07');
    expect(early).toHaveLength(1);
    expect(late).toEqual(early);
  });

  test('is not asked on a day that has a batch, and again on the next', () => {
    const batch = said('2026-03-06T15:30:00.000Z', cook('166', true), 1);
    expect(only(lotDues(kitchen(opened, batch), at('2026-03-06T15:30:00.000Z')), ':cook:')).toEqual([
      '2026-03-07T17:00:00.000Z',
    ]);
  });

  test('under the limit rings three minutes later, until the batch passes', () => {
    const under = said('2026-03-06T17:00:00.000Z', cook('158', false), 1);
    const now = at('2026-03-06T17:00:00.000Z');
    expect(only(lotDues(kitchen(opened, under), now), ':check:')).toEqual(['2026-03-06T17:03:00.000Z']);
    const passed = said('2026-03-06T17:05:00.000Z', cook('166', true), 1);
    expect(only(lotDues(kitchen(opened, under, passed), now), ':check:')).toEqual([]);
  });

  test('of another batch is asked again: one passing burger clears nothing', () => {
    const passed = said('2026-03-06T17:00:00.000Z', cook('166', true), 1);
    const next = said('2026-03-06T18:00:00.000Z', { type: 'batchBegun' }, 1);
    expect(only(lotDues(kitchen(opened, passed, next), at(next.at)), ':batch:')).toEqual([
      '2026-03-06T18:10:00.000Z',
    ]);
    expect(lotsWithoutPass(kitchen(opened, passed, next)).map(({ id }) => id)).toEqual([1]);
    expect(lotsWithoutPass(kitchen(opened, passed))).toEqual([]);
  });

  test('of a batch that was thrown away is asked no more, and an hour later the day is asked about again', () => {
    const begun = said('2026-03-06T17:00:00.000Z', { type: 'batchBegun' }, 1);
    const thrown = said('2026-03-06T17:05:00.000Z', { type: 'batchEnded' }, 1);
    const dues = lotDues(kitchen(opened, begun, thrown), at(thrown.at));
    expect(only(dues, ':batch:')).toEqual([]);
    expect(only(dues, ':cook:2026-03-06')).toEqual(['2026-03-06T18:05:00.000Z']);
    expect(lotsWithoutPass(kitchen(opened, begun, thrown))).toHaveLength(1);
    const passed = said('2026-03-06T18:10:00.000Z', cook('166', true), 1);
    expect(lotsWithoutPass(kitchen(opened, begun, thrown, passed))).toEqual([]);
  });

  test('of a batch that came to nothing is asked of the day again once it is over', () => {
    const under = said('2026-03-06T17:00:00.000Z', cook('158', false), 1);
    const dues = lotDues(kitchen(opened, under), at(under.at));
    expect(only(dues, ':cook:2026-03-06')).toEqual(['2026-03-06T21:00:00.000Z']);
  });

  test('of a batch noted by a clock that was ahead is asked as if it were noted now', () => {
    const begun = said('2026-03-07T15:00:00.000Z', { type: 'batchBegun' }, 1);
    const [due] = lotDues(kitchen(opened, begun), at(NINE)).filter(({ key }) => key.includes(':batch:'));
    expect(due).toMatchObject({ at: at(NINE) + 10 * 60_000, isAhead: true });
  });

  test('is never asked of a lot that is closed, or taken back', () => {
    const ended = said('2026-03-06T18:00:00.000Z', { type: 'lotEnded', how: 'thrown' }, 1);
    expect(lotDues(kitchen(opened, ended), at(NINE))).toEqual([]);
    const undone = said('2026-03-06T18:00:00.000Z', { type: 'undone', target: opened.entry, bare: true }, 1);
    expect(lotDues(kitchen(opened, undone), at(NINE))).toEqual([]);
  });
});

test('the storage of a lot is told after a day, and asked as an alarm after two', () => {
  const dues = lotDues(kitchen(said(NINE, GROUND, 1)), at(NINE)).filter(({ key }) => key.includes('storage'));
  expect(dues.map(({ at: when, alarm }) => [new Date(when).toISOString(), alarm])).toEqual([
    ['2026-03-07T15:00:00.000Z', false],
    ['2026-03-08T15:00:00.000Z', true],
  ]);
});

describe('warm raw trim', () => {
  const warm = said(NINE, raw('45', false));

  test('rings after fifteen minutes, and by one key however late it is', () => {
    expect(only(lotDues(kitchen(warm), at(NINE)), 'raw:')).toEqual(['2026-03-06T15:15:00.000Z']);
    const asleep = lotDues(kitchen(warm), at('2026-03-06T16:20:00.000Z'));
    expect(only(asleep, 'raw:')).toEqual(['2026-03-06T15:15:00.000Z']);
    expect(keys(asleep, 'raw:')).toEqual([`raw:${warm.entry}`]);
  });

  test('is silent after a cold reading, and rings again where that is taken back', () => {
    const cold = said('2026-03-06T15:10:00.000Z', raw('39', true));
    expect(lotDues(kitchen(warm, cold), at(NINE))).toEqual([]);
    const undone = said('2026-03-06T15:11:00.000Z', { type: 'undone', target: cold.entry, bare: true });
    expect(only(lotDues(kitchen(warm, cold, undone), at(NINE)), 'raw:')).toEqual([
      '2026-03-06T15:15:00.000Z',
    ]);
  });

  test('of a lot is silent once the lot is thrown away', () => {
    const grind: Fact = { ...raw('45', false), what: 'grind', food: 'raw' } as Fact;
    const facts = [said(NINE, GROUND, 1), said(NINE, grind, 1)];
    expect(keys(lotDues(kitchen(...facts), at(NINE)), 'raw:')).toHaveLength(1);
    expect(lotDues(kitchen(...facts, said(NINE, { type: 'lotEnded', how: 'thrown' }, 1)), at(NINE))).toEqual(
      [],
    );
  });
});

test('cooked food is asked for after two and six hours, by the last step that it reached', () => {
  const begun = said(NINE, { type: 'coolingBegun', what: 'chili' });
  expect(only(lotDues(kitchen(begun), at(NINE)), 'cooling:')).toEqual([
    '2026-03-06T17:00:00.000Z',
    '2026-03-06T21:00:00.000Z',
  ]);
  const step = (reached: 'none' | 'seventy' | 'cold') => ({ reached, late: false });
  const reading = (degrees: string, to: 'seventy' | 'cold'): Fact => ({
    ...{
      type: 'temperatureRead',
      what: 'chili',
      food: 'cooked',
      stage: 'cooling',
      degreesF: decimal(degrees),
      passed: true,
    },
    cooling: { begun: begun.entry, since: NINE, before: step('none'), now: step(to) },
  });
  const seventy = said('2026-03-06T16:30:00.000Z', reading('69', 'seventy'));
  expect(only(lotDues(kitchen(begun, seventy), at(NINE)), 'cooling:')).toEqual(['2026-03-06T21:00:00.000Z']);
  const cold = said('2026-03-06T19:00:00.000Z', reading('40', 'cold'));
  expect(lotDues(kitchen(begun, seventy, cold), at(NINE))).toEqual([]);
});

test('raw trim never starts the clock of cooked food', () => {
  const facts = [said(NINE, GROUND, 1), said(NINE, raw('60', false))];
  expect(keys(lotDues(kitchen(...facts), at(NINE)), 'cooling:')).toEqual([]);
});

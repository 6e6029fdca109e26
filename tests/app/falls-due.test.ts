// What falls due is told once for its key, whatever the clock, the zone, a stop or another process does meanwhile.
import { describe, expect, it } from 'vitest';
import type { Due } from '../../src/core/due.ts';
import { say } from '../../src/core/reply.ts';
import { dues, type DuesOf } from '../../src/core/schedule.ts';
import type { Settings } from '../../src/core/kitchen.ts';
import { instantOf, localOf } from '../../src/core/local-time.ts';
import type { Table, Told } from '../../src/app/ports/table.ts';
import { openTable } from '../../src/app/turn.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import { english } from '../language/english.ts';

const ZONE = 'America/Chicago';
const SETTINGS: Settings = {
  unit: 'lb',
  currency: 'USD',
  timezone: ZONE,
  language: 'en',
  laborAvoidable: true,
  openedAt: '2026-01-01T00:00:00.000Z',
};
const HOUR = 3600_000;
const PEOPLE = new Map(['ana', 'marit'].map((name) => [name, name]));

const at = (local: string): number => Date.parse(instantOf(local, ZONE) ?? '');

/** A kitchen that can be stopped and started, and whose clock is ours. */
async function kitchen(settings: Partial<Settings> = {}, duesOf?: DuesOf) {
  const store = await openSqlite(':memory:');
  await store.create('home', { ...SETTINGS, ...settings });
  const open = (): Promise<Table> =>
    openTable({ store, id: 'home', ...english, ...(duesOf === undefined ? {} : { duesOf }) });
  let table = await open();
  let count = 0;
  return {
    store,
    open,
    restart: async () => {
      table = await open();
    },
    say: (text: string, ms: number, speaker = 'ana') =>
      table.take({
        id: `m${(count += 1)}`,
        speaker,
        at: new Date(ms).toISOString(),
        text,
        role: 'owner',
        people: PEOPLE,
      }),
    look: (ms: number): Promise<readonly Told[]> => table.tellDue({ at: new Date(ms).toISOString() }),
  };
}

const texts = (all: readonly Told[]): readonly string[] => all.map(({ words }) => words('owner'));

const NOTICES = { unknown: '', again: '', repeat: '' };

describe('a reminder', () => {
  it('is told at its time and never again, also after a restart', async () => {
    const home = await kitchen();
    await home.say('remind me at 3 to check the grind', at('2026-03-06T09:00'));
    expect(await home.look(at('2026-03-06T14:59'))).toEqual([]);
    expect(texts(await home.look(at('2026-03-06T15:00')))).toEqual(['Reminder: check the grind']);
    await home.restart();
    expect(await home.look(at('2026-03-06T15:01'))).toEqual([]);
  });

  it('that is overdue at the start is told at once, and how late it is', async () => {
    const home = await kitchen();
    await home.say('remind me at 3 to check the grind', at('2026-03-06T09:00'));
    await home.restart();
    const [told] = texts(await home.look(at('2026-03-06T18:00')));
    expect(told).toContain('check the grind');
    expect(told).toContain('late by 3 h');
  });

  it('in two hours is elapsed time: the clocks that go forward meanwhile do not bring it sooner', async () => {
    const home = await kitchen();
    const begun = at('2026-03-08T01:30');
    const { entries } = await home.say('remind me in two hours to turn it', begun);
    expect(entries).toMatchObject([{ when: '2026-03-08T04:30' }]);
    expect(await home.look(begun + 2 * HOUR - 1)).toEqual([]);
    expect(await home.look(begun + 2 * HOUR)).toHaveLength(1);
  });

  it('of each day comes at its local time over both clock changes', async () => {
    const home = await kitchen();
    await home.say('remind me every day at 7 am to check the cooler', at('2026-03-06T09:00'));
    const told: string[] = [];
    for (let ms = at('2026-03-06T09:00'); ms < at('2026-03-10T09:00'); ms += HOUR / 4)
      for (const each of await home.look(ms)) told.push(localOf(Date.parse(each.at), ZONE));
    expect(told).toEqual(['2026-03-07T07:00', '2026-03-08T07:00', '2026-03-09T07:00', '2026-03-10T07:00']);
    const autumn = await kitchen();
    await autumn.say('remind me every day at 1:30 am to check the cooler', at('2026-10-31T09:00'));
    const fallen: string[] = [];
    for (let ms = at('2026-10-31T09:00'); ms < at('2026-11-02T09:00'); ms += HOUR / 4)
      for (const each of await autumn.look(ms)) fallen.push(localOf(Date.parse(each.at), ZONE));
    expect(fallen).toEqual(['2026-11-01T01:30', '2026-11-02T01:30']);
  });

  it('of each day that was missed for days is told once, not once for each', async () => {
    const home = await kitchen();
    await home.say('remind me every day at 7 am to check the cooler', at('2026-03-06T09:00'));
    expect(await home.look(at('2026-03-10T09:00'))).toHaveLength(1);
    expect(await home.look(at('2026-03-10T09:01'))).toEqual([]);
    expect(await home.look(at('2026-03-11T07:00'))).toHaveLength(1);
  });
});

describe('the summary', () => {
  const summaries = (told: readonly Told[]): readonly string[] => told.map(({ key }) => key);

  it('comes once for each local date, with the clock an hour back and forth', async () => {
    const home = await kitchen({ summaryAt: '22:00', openedAt: '2026-03-06T16:00:00.000Z' });
    const due = at('2026-03-06T22:00');
    const looks = [due, due - HOUR, due, due + HOUR, due - HOUR, due + 1000];
    const keys: string[] = [];
    for (const ms of looks) keys.push(...summaries(await home.look(ms)));
    expect(keys).toEqual(['summary:day:2026-03-06']);
  });

  it('comes once for a date on which the zone changes after it', async () => {
    const home = await kitchen({ summaryAt: '22:00', openedAt: '2026-03-06T16:00:00.000Z' });
    expect(await home.look(at('2026-03-06T22:00'))).toHaveLength(1);
    await home.say('the zone is pacific', at('2026-03-06T22:05'));
    expect(await home.look(at('2026-03-07T00:00'))).toEqual([]);
    expect(summaries(await home.look(at('2026-03-08T00:00')))).toEqual(['summary:day:2026-03-07']);
  });

  it.each(['2026-03-08', '2026-11-01'])('comes once on %s, when the clocks change', async (date) => {
    const home = await kitchen({ summaryAt: '01:30', openedAt: new Date(at(`${date}T00:00`)).toISOString() });
    const keys: string[] = [];
    for (let ms = at(`${date}T00:00`); ms < at(`${date}T23:00`); ms += HOUR / 4)
      keys.push(...summaries(await home.look(ms)));
    expect(keys).toEqual([`summary:day:${date}`]);
  });

  it('is not told again by another process that did not know of it', async () => {
    const home = await kitchen({ summaryAt: '22:00', openedAt: '2026-03-06T16:00:00.000Z' });
    const [one, two] = [await home.open(), await home.open()];
    const due = new Date(at('2026-03-06T22:00')).toISOString();
    const told = await Promise.all([one.tellDue({ at: due }), two.tellDue({ at: due })]);
    expect(told.flat()).toHaveLength(1);
  });

  it('of an empty day is silent by setting, and is not tried again', async () => {
    const home = await kitchen({ summaryAt: '22:00', openedAt: '2026-03-06T16:00:00.000Z' });
    await home.say('skip empty days', at('2026-03-06T21:00'));
    expect(await home.look(at('2026-03-06T22:00'))).toEqual([]);
    await home.say('tell us empty days too', at('2026-03-06T22:10'));
    expect(await home.look(at('2026-03-06T22:11'))).toEqual([]);
    expect(await home.look(at('2026-03-07T22:00'))).toHaveLength(1);
  });

  it('tells the letters in the same transaction, once', async () => {
    const home = await kitchen({ summaryAt: '22:00', openedAt: '2026-03-06T16:00:00.000Z' });
    const [one, two] = [await home.open(), await home.open()];
    const telling = {
      at: new Date(at('2026-03-06T22:00')).toISOString(),
      post: () =>
        Promise.resolve({ bot: '1', letters: [{ chat: 7, kind: 'message' as const, text: 'the day' }] }),
    };
    await Promise.all([one.tellDue(telling), two.tellDue(telling)]);
    expect(await home.store.takeLetter('1', 7, NOTICES)).toMatchObject({ text: 'the day' });
    expect(await home.store.takeLetter('1', 7, NOTICES)).toBeUndefined();
  });
});

describe('an alarm', () => {
  const begun = at('2026-03-06T12:00');
  const alarm: Due = { key: 'lot:7:warm', at: begun, to: 'team', say: [say('reminder-plain')], alarm: true };
  const lot =
    (state: { warm: boolean }): DuesOf =>
    (now_, ms) =>
      dues(now_, ms, [() => (state.warm ? [alarm] : [])]);

  it('rings again after the set time, and goes to the second person as well as the team, until somebody acknowledges it', async () => {
    const home = await kitchen({}, lot({ warm: true }));
    await home.say('second person is marit', begun - HOUR);
    expect(await home.look(begun)).toMatchObject([{ to: 'team', alarm: true }]);
    expect(await home.look(begun + 9 * 60_000)).toEqual([]);
    expect(await home.look(begun + 10 * 60_000)).toMatchObject([
      { to: { speaker: 'marit', withTeam: true } },
    ]);
    await home.restart();
    expect(await home.look(begun + 29 * 60_000)).toEqual([]);
    expect(await home.look(begun + 30 * 60_000)).toHaveLength(1);
    expect(await home.say('ok', begun + 31 * 60_000, 'marit')).toMatchObject({ outcome: 'recorded' });
    await home.restart();
    expect(await home.look(begun + 10 * HOUR)).toEqual([]);
    expect(await home.say('got it', begun + 11 * HOUR)).toMatchObject({ outcome: 'ignored' });
  });

  it('of warm meat says to whoever has it when it rings again', async () => {
    const home = await kitchen();
    await home.say('raw trim 45', begun);
    expect(await home.look(begun + 15 * 60_000)).toHaveLength(1);
    const { reply } = await home.say('got it', begun + 16 * 60_000);
    expect(reply).toContain('I ring again in 15 min if it is not settled by then.');
  });

  it('is logged with who acknowledged it and when', async () => {
    const home = await kitchen({}, lot({ warm: true }));
    await home.look(begun);
    await home.say('got it', begun + 60_000, 'ana');
    const facts = [];
    for await (const each of home.store.facts('home')) facts.push(each);
    expect(facts).toMatchObject([
      { fact: { type: 'fired', key: 'lot:7:warm', alarm: true } },
      {
        fact: { type: 'acknowledged', keys: ['lot:7:warm'] },
        speaker: 'ana',
        at: new Date(begun + 60_000).toISOString(),
      },
    ]);
  });

  it('falls silent when its reason is gone', async () => {
    const state = { warm: true };
    const home = await kitchen({}, lot(state));
    await home.look(begun);
    state.warm = false;
    expect(await home.look(begun + HOUR)).toEqual([]);
  });

  it('rings once after three hours asleep, not once for each ring that was missed', async () => {
    const home = await kitchen({}, lot({ warm: true }));
    expect(await home.look(begun + 3 * HOUR)).toHaveLength(1);
    expect(await home.look(begun + 3 * HOUR + 1000)).toEqual([]);
    expect(texts(await home.look(begun + 3 * HOUR + 10 * 60_000))[0]).toContain('Nobody has acknowledged');
  });

  it('is neither lost nor doubled by a clock that goes an hour back', async () => {
    const home = await kitchen({}, lot({ warm: true }));
    const all = [begun, begun - HOUR, begun, begun + 5 * 60_000];
    const told = [];
    for (const ms of all) told.push(...(await home.look(ms)));
    expect(told).toHaveLength(1);
  });

  it('of a batch that was noted by a clock an hour or a day ahead is told soon after the clock came back, once', async () => {
    for (const ahead of [HOUR, 24 * HOUR]) {
      const home = await kitchen();
      await home.say('grinding the trim', begun);
      await home.say('cooking a batch', begun + ahead);
      const told: number[] = [];
      for (let ms = begun; ms < begun + HOUR / 2; ms += 60_000)
        for (const { key } of await home.look(ms)) if (/:batch:[^#]*$/.test(key)) told.push(ms - begun);
      expect(told).toEqual([10 * 60_000]);
    }
  });

  it('that rang by a clock that was ahead rings again ten minutes after the clock came back', async () => {
    const home = await kitchen({}, lot({ warm: true }));
    expect(await home.look(begun + 24 * HOUR)).toHaveLength(1);
    const told: number[] = [];
    for (let ms = begun; ms < begun + HOUR / 4; ms += 60_000)
      for (const each of await home.look(ms)) told.push(Date.parse(each.at) - begun);
    expect(told).toEqual([10 * 60_000]);
  });

  it.each(['2026-03-08', '2026-11-01'])(
    'of food that cools is elapsed time on %s, when the clocks change',
    async (date) => {
      const home = await kitchen();
      const start = at(`${date}T00:30`);
      await home.say('start cooling the chili', start);
      expect(await home.look(start + 2 * HOUR - 1)).toEqual([]);
      expect(texts(await home.look(start + 2 * HOUR))[0]).toContain('70 °F');
    },
  );

  it('of a lot is asked once for a day on which the zone changes', async () => {
    const home = await kitchen();
    await home.say('grinding the trim', at('2026-03-05T09:00'));
    await home.look(at('2026-03-05T20:00'));
    const isDay = ({ key }: Told): boolean => key.endsWith(':cook:2026-03-06');
    const first = await home.look(at('2026-03-06T11:00'));
    await home.say('got it', at('2026-03-06T11:01'));
    await home.say('the zone is pacific', at('2026-03-06T11:02'));
    const more: Told[] = [];
    for (let ms = at('2026-03-06T11:03'); ms < at('2026-03-06T23:00'); ms += HOUR / 4)
      more.push(...(await home.look(ms)));
    expect([first.filter(isDay).length, more.filter(isDay).length]).toEqual([1, 0]);
  });

  it('that is overdue by a stop is told once at the start, with how late it is', async () => {
    const home = await kitchen();
    await home.say('grinding the trim', begun);
    await home.say('cooking a batch', begun + 60_000);
    await home.restart();
    const told = texts(await home.look(begun + 3 * HOUR)).filter((each) => each.includes('on the heat'));
    expect(told).toHaveLength(1);
    expect(told[0]).toContain('late by 2 h 49 min');
    await home.restart();
    expect(await home.look(begun + 3 * HOUR + 1000)).toEqual([]);
  });
});

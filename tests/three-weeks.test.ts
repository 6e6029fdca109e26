// Three weeks of tests of two cuts by two cutters, replayed, against a second reckoning in whole fractions: from the weights, prices and
// minutes as they are said in the story, by the formulas of docs/calculations.md, and nothing of the program.
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { scratchOpener } from '../src/app/scratch.ts';
import { loadVoice } from '../src/app/voice.ts';
import { play } from '../src/channels/replay/play.ts';
import { readShift } from '../src/channels/replay/shift-file.ts';
import { openSqlite } from '../src/storage/sqlite/open.ts';
import { exact, type Fraction, minus, over, plus, root, times, total, written } from './core/exact.ts';

/** Quantiles of Student's t as printed in the NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2, by degrees of freedom. */
const T_95: Readonly<Record<number, string>> = { 2: '2.920', 3: '2.353', 5: '2.015' };
const T_90: Readonly<Record<number, string>> = { 3: '1.638', 5: '1.476' };

interface Said {
  readonly item: string;
  readonly closed: string;
  readonly supplier: string;
  readonly cutter: string;
  readonly received: string;
  readonly price: string;
  readonly fat: string;
  /** In pounds, and what of an end piece went to it in ounces. */
  readonly trim: readonly [lb: string, oz?: string];
  /** Ounces of each portion; or how many, and what they weigh together in pounds. */
  readonly portions: string | readonly [count: number, lb: string];
  readonly minutes: string;
  readonly rate: string;
}

const TESTS: readonly Said[] = [
  { item: 'striploin', closed: '2026-10-05T08:24', supplier: 'fernhill', cutter: 'sefa', received: '13.6', price: '8.10', fat: '1.7', trim: ['1.1', '6.5'], portions: '12.4 12.2 12.6 12.3 12.5 12.1 12.4 12.3 12.5 12.2 12.4 12.3 12', minutes: '22', rate: '21' },
  { item: 'striploin', closed: '2026-10-07T08:24', supplier: 'oxbow', cutter: 'joris', received: '14.1', price: '8.35', fat: '1.8', trim: ['1.3'], portions: '12.1 12 11.9 12.2 12 12.1 11.8 12 12.1 12.2 11.9 12 12.1 12', minutes: '24', rate: '21' },
  { item: 'striploin', closed: '2026-10-12T08:21', supplier: 'oxbow', cutter: 'sefa', received: '13.9', price: '8.35', fat: '1.8', trim: ['1.1'], portions: '12.5 12.3 12.4 12.6 12.2 12.4 12.3 12.5 12.4 12.2 12.6 12.3 12.4 12.5', minutes: '22', rate: '21' },
  { item: 'striploin', closed: '2026-10-14T08:23', supplier: 'fernhill', cutter: 'joris', received: '13.4', price: '8.10', fat: '1.6', trim: ['1.2'], portions: '12 12.1 11.9 12 12.2 12 11.9 12.1 12 12 12.1 11.9 12 12.1', minutes: '23', rate: '21' },
  { item: 'striploin', closed: '2026-10-19T08:22', supplier: 'fernhill', cutter: 'sefa', received: '14.2', price: '8.10', fat: '1.8', trim: ['1.2'], portions: '12.4 12.3 12.5 12.2 12.4 12.6 12.3 12.4 12.5 12.3 12.4 12.2 12.5 12.4', minutes: '22', rate: '21' },
  { item: 'striploin', closed: '2026-10-21T08:30', supplier: 'oxbow', cutter: 'joris', received: '13.8', price: '8.35', fat: '1.7', trim: ['1.3'], portions: '12 11.9 12.1 12 12.1 12.2 11.9 12 12 12.1 12 11.9 12.1 12', minutes: '24', rate: '22' },
  { item: 'pork loin', closed: '2026-10-06T08:25', supplier: 'oxbow', cutter: 'joris', received: '9.4', price: '3.40', fat: '1.1', trim: ['0.6'], portions: [14, '7.3'], minutes: '15', rate: '21' },
  { item: 'pork loin', closed: '2026-10-13T08:05', supplier: 'oxbow', cutter: 'sefa', received: '9.8', price: '3.40', fat: '1.2', trim: ['0.6'], portions: [15, '7.7'], minutes: '16', rate: '21' },
  { item: 'pork loin', closed: '2026-10-20T08:05', supplier: 'oxbow', cutter: 'joris', received: '9.6', price: '3.40', fat: '1.2', trim: ['0.6'], portions: [14, '7.4'], minutes: '15', rate: '21' },
  { item: 'pork loin', closed: '2026-10-22T08:05', supplier: 'oxbow', cutter: 'sefa', received: '9.5', price: '3.55', fat: '1.1', trim: ['0.6'], portions: [14, '7.5'], minutes: '15', rate: '22' },
]; // prettier-ignore

/** What is said once for each cut: the worth of its trim, packing for a portion, its ready-cut price and the size. */
const CUTS = {
  striploin: { worth: '1.80', packing: '0.12', readyCut: '12.60', size: '12' },
  'pork loin': { worth: '1.10', packing: '0.08', readyCut: '5.40', size: '8' },
} as const;
const cutOf = ({ item }: Said) => CUTS[item as keyof typeof CUTS];

const [SIXTEEN, SIXTY, HUNDRED, ONE] = [exact(16), exact(60), exact(100), exact(1)];
const ounces = ({ portions }: Said): readonly Fraction[] =>
  typeof portions === 'string' ? portions.split(' ').map(exact) : [];
const countOf = ({ portions }: Said): number =>
  typeof portions === 'string' ? portions.split(' ').length : portions[0];
const usable = (test: Said): Fraction =>
  typeof test.portions === 'string' ? over(total(ounces(test)), SIXTEEN) : exact(test.portions[1]);
const trimOf = ({ trim: [lb, oz = '0'] }: Said): Fraction => plus(exact(lb), over(exact(oz), SIXTEEN));
const creditOf = (test: Said): Fraction => times(trimOf(test), exact(cutOf(test).worth));
const laborOf = ({ minutes, rate }: Said): Fraction => times(over(exact(minutes), SIXTY), exact(rate));
const packingOf = (test: Said): Fraction => times(exact(countOf(test)), exact(cutOf(test).packing));
const netOf = (test: Said): Fraction => minus(times(exact(test.received), exact(test.price)), creditOf(test));
const costOf = (test: Said): Fraction => over(netOf(test), usable(test));
const yieldOf = (test: Said): Fraction => times(HUNDRED, over(usable(test), exact(test.received)));

const shift = readShift('transcripts-demo/8-three-weeks.yaml');
const open = scratchOpener(() => openSqlite(':memory:'), loadVoice('intents', 'en'));
const played = z
  .object({
    turns: z.array(z.object({ text: z.string(), at: z.string(), outcome: z.string(), reply: z.string() })),
    tests: z.array(z.looseObject({ item: z.string() })),
  })
  .parse(JSON.parse(JSON.stringify(await play(open, shift))));

/** What was answered to these words the last time that they were said by somebody who may ask so. */
const reply = (text: string): string =>
  played.turns.findLast((turn) => turn.text === text && turn.outcome !== 'refused')?.reply ?? '';
/** The figures that stand in an answer where the pattern has its groups. */
const told = (text: string, pattern: RegExp): readonly string[] => pattern.exec(reply(text))?.slice(1) ?? [];
const rounded = (figure: Fraction, places: number): number => Number(written(figure, places));
const numbers = (figures: readonly string[]): readonly number[] => figures.map(Number);
const of = (item: string): readonly Said[] => TESTS.filter((test) => test.item === item);

/** Eight significant digits, as the contract wants them. */
function same(figure: unknown, expected: Fraction): void {
  const value = Number(written(expected, 15));
  expect(Math.abs(Number(figure) - value)).toBeLessThanOrEqual(Math.abs(value) * 1e-8);
}

interface Pooled {
  readonly tests: readonly Said[];
  readonly received: Fraction;
  readonly portions: Fraction;
  readonly credit: Fraction;
  readonly work: Fraction;
  readonly yieldPct: Fraction;
  readonly mean: Fraction;
  readonly deviation: Fraction;
  readonly low: Fraction;
  readonly high: Fraction;
}

function pooled(tests: readonly Said[]): Pooled {
  const sum = (figure: (test: Said) => Fraction): Fraction => total(tests.map(figure));
  const n = exact(tests.length);
  const [received, portions] = [sum(({ received }) => exact(received)), sum(usable)];
  const mean = over(sum(yieldOf), n);
  const squares = sum((test) => times(minus(yieldOf(test), mean), minus(yieldOf(test), mean)));
  const deviation = root(over(squares, minus(n, ONE)));
  const margin = times(exact(T_95[tests.length - 1] ?? '0'), over(deviation, root(n)));
  return {
    ...{ tests, received, portions, mean, deviation },
    credit: sum(creditOf),
    work: sum((test) => plus(laborOf(test), packingOf(test))),
    yieldPct: times(HUNDRED, over(portions, received)),
    low: minus(mean, margin),
    high: plus(mean, margin),
  };
}

const usableAt = ({ received, portions, credit }: Pooled, price: string): Fraction =>
  over(minus(times(exact(price), received), credit), portions);
const loadedAt = (pool: Pooled, price: string): Fraction =>
  plus(usableAt(pool, price), over(pool.work, pool.portions));
/** At either end of the interval of the yield. */
const intervalAt = (pool: Pooled, price: string): readonly Fraction[] => {
  const net = minus(exact(price), over(pool.credit, pool.received));
  return [pool.high, pool.low].map((pct) => over(times(HUNDRED, net), pct));
};
const breakEvenYield = ({ received, credit, work }: Pooled, price: string, readyCut: string): Fraction =>
  over(times(HUNDRED, minus(exact(price), over(minus(credit, work), received))), exact(readyCut));
const breakEvenPrice = ({ received, portions, credit, work }: Pooled, readyCut: string): Fraction =>
  over(minus(plus(times(exact(readyCut), portions), credit), work), received);

const compare = (one: Fraction, other: Fraction): number => Number(minus(one, other).over);
const isWithin = ({ low, high }: Pooled, pct: Fraction): boolean =>
  compare(pct, low) >= 0 && compare(pct, high) <= 0;

/** Minutes of the clock on the wall; in Chicago an hour is put in on November 1. */
const minutesBetween = (from: string, to: string): number =>
  (Date.parse(`${to}Z`) - Date.parse(`${from}Z`)) / 60_000 + (to > '2026-11-01T02' ? 60 : 0);
const WEEK = 7 * 24 * 60;
/** The tests after the first, by the weeks since; the story has less than eight. */
const perWeek = (tests: readonly Said[], now: string): Fraction =>
  over(exact((tests.length - 1) * WEEK), exact(minutesBetween(tests[0]?.closed ?? '', now)));

/** What a portion weighs in the mean over all that were cut. */
const meanOz = ({ tests }: Pooled): Fraction =>
  over(times(SIXTEEN, total(tests.map(usable))), exact(tests.reduce((sum, test) => sum + countOf(test), 0)));

const STRIPLOIN = pooled(of('striploin'));
const PORK = pooled(of('pork loin'));
const FRIDAY = '2026-10-23T15:00';
const [STRIP_PRICE, PORK_PRICE] = ['8.35', '3.55'];

it('leaves no line without an answer, and asks only about slips, the end piece and a piece without portions', () => {
  expect(played.turns.filter(({ outcome }) => outcome === 'ignored')).toEqual([]);
  expect(played.turns.filter(({ outcome }) => outcome === 'asked').map(({ text }) => text)).toEqual([
    'end piece 18.5',
    'done',
    'fat one point eight trim twelve',
  ]);
});

describe('each test', () => {
  it.each(['striploin', 'pork loin'])('%s: what is left, what a pound costs, and what turns it', (item) => {
    const found = played.tests.filter((test) => test.item === item);
    expect(found).toHaveLength(of(item).length);
    for (const [at, test] of of(item).entries()) {
      const json = found[at] as unknown as Record<string, unknown> & {
        portions: Record<string, unknown>;
        verdict: Record<string, unknown>;
      };
      const { readyCut, size } = cutOf(test);
      const cost = costOf(test);
      const loaded = plus(cost, over(plus(laborOf(test), packingOf(test)), usable(test)));
      same(
        json['unaccountedLb'],
        minus(minus(minus(exact(test.received), exact(test.fat)), trimOf(test)), usable(test)),
      );
      same(json.portions['weightLb'], usable(test));
      same(json.portions['meanOz'], over(times(SIXTEEN, usable(test)), exact(countOf(test))));
      same(json['creditTotal'], creditOf(test));
      same(json['usableCostPerLb'], cost);
      same(json['portionCost'], over(times(cost, exact(size)), SIXTEEN));
      same(json['loadedCostPerLb'], loaded);
      same(json.verdict['savingPerLb'], minus(exact(readyCut), loaded));
      const work = plus(laborOf(test), packingOf(test));
      same(
        json.verdict['breakEvenPricePerLb'],
        over(minus(plus(times(exact(readyCut), usable(test)), creditOf(test)), work), exact(test.received)),
      );
      const even = times(
        HUNDRED,
        over(
          minus(exact(test.price), over(minus(creditOf(test), work), exact(test.received))),
          exact(readyCut),
        ),
      );
      const pool = item === 'striploin' ? STRIPLOIN : PORK;
      const choice = compare(exact(readyCut), loaded) > 0 ? 'cut' : 'buy';
      expect(json.verdict['choice']).toBe(isWithin(pool, even) ? 'close' : choice);
    }
  });
});

describe('what it costs', () => {
  const sure =
    /usable cost \$([\d.]+)\/lb at \$([\d.]+)\/lb\.\n90 % sure between \$([\d.]+)\/lb and \$([\d.]+)\/lb, with labor and packing \$([\d.]+)\/lb, ([\d.]+) % yield over (\d) tests/;

  it.each([
    ['striploin', STRIPLOIN, STRIP_PRICE],
    ['pork loin', PORK, PORK_PRICE],
  ] as const)('%s, with its interval', (item, pool, price) => {
    expect(numbers(told(item === 'striploin' ? "what's striploin at" : "what's pork loin at", sure))).toEqual(
      [usableAt(pool, price), exact(price), ...intervalAt(pool, price), loadedAt(pool, price)]
        .map((figure) => rounded(figure, 2))
        .concat([rounded(pool.yieldPct, 1), pool.tests.length]),
    );
  });

  it('at another price, which changes nothing', () => {
    const what =
      /at \$8\.60\/lb would be \$([\d.]+)\/lb usable\.\n90 % sure between \$([\d.]+)\/lb and \$([\d.]+)\/lb, with labor and packing \$([\d.]+)/;
    expect(numbers(told('striploin at 8.60?', what))).toEqual(
      [usableAt(STRIPLOIN, '8.60'), ...intervalAt(STRIPLOIN, '8.60'), loadedAt(STRIPLOIN, '8.60')].map(
        (figure) => rounded(figure, 2),
      ),
    );
  });

  it('on the menu, both ways', () => {
    const portion = over(times(usableAt(STRIPLOIN, STRIP_PRICE), exact(12)), SIXTEEN);
    expect(
      numbers(
        told(
          'menu price for striploin at 30 percent',
          /charge \$([\d.]+) at 30 % food cost \(12 oz costs \$([\d.]+)\)/,
        ),
      ),
    ).toEqual([rounded(over(portion, exact('0.3')), 2), rounded(portion, 2)]);
    expect(numbers(told('food cost on striploin at 28', /is ([\d.]+) % food cost/))).toEqual([
      rounded(times(HUNDRED, over(portion, exact(28))), 1),
    ]);
  });
});

describe('yields', () => {
  it('of all, with their spread', () => {
    expect(
      numbers(told('striploin yield', /([\d.]+) % yield over (\d) tests, spread ([\d.]+) points/)),
    ).toEqual([rounded(STRIPLOIN.yieldPct, 1), 6, rounded(STRIPLOIN.deviation, 1)]);
  });

  it.each(['supplier', 'cutter'] as const)('by %s, and whether that is more than chance', (by) => {
    const groups = [...new Set(STRIPLOIN.tests.map((test) => test[by]))]
      .sort()
      .map((who) => ({ who, pool: pooled(STRIPLOIN.tests.filter((test) => test[by] === who)) }));
    const lines = groups.map(
      ({ who, pool }) =>
        `${who}: ${rounded(pool.yieldPct, 1)} % yield over 3 tests, spread ${rounded(pool.deviation, 1)} points between tests`,
    );
    const [one, other] = groups.map(({ pool }) => pool);
    const apart =
      one !== undefined &&
      other !== undefined &&
      (compare(one.low, other.high) > 0 || compare(other.low, one.high) > 0);
    expect(reply(`striploin yield by ${by}`).split('\n')).toEqual([
      ...lines,
      apart ? 'The difference is more than chance (90 %).' : 'The difference may be chance.',
    ]);
  });
});

describe('cut or buy', () => {
  const points =
    /turns at: purchase \$([\d.]+)\/lb, ready-cut \$([\d.]+)\/lb, yield ([\d.]+) % \(now ([\d.]+) %\)/;
  const saving =
    /saves (?:\$([\d.]+) on a portion of \d+ oz, )?\$([\d.]+) a test, \$([\d.]+) a week \(tests a week: ([\d.]+)\)/;
  const answers = played.turns.filter(({ text }) => text.startsWith('cut or buy'));

  it.each([
    ['striploin', STRIPLOIN, STRIP_PRICE, FRIDAY],
    ['pork loin', PORK, PORK_PRICE, FRIDAY],
    ['striploin', STRIPLOIN, '9.30', '2026-11-02T07:30'],
  ] as const)('%s: the answer, what it saves, and what turns it', (item, pool, price, now) => {
    const { readyCut, size } = CUTS[item];
    const answer = answers.find(({ text, at }) => text === `cut or buy ${item}` && at === now)?.reply ?? '';
    const gain = minus(exact(readyCut), loadedAt(pool, price));
    const even = breakEvenYield(pool, price, readyCut);
    const word = isWithin(pool, even) ? 'TOO CLOSE TO CALL' : compare(gain, exact(0)) > 0 ? 'CUT' : 'BUY';
    expect(answer.split(':')[0]).toBe(word);
    const turns = [
      rounded(breakEvenPrice(pool, readyCut), 2),
      rounded(loadedAt(pool, price), 2),
      rounded(even, 1),
      rounded(pool.yieldPct, 1),
    ];
    expect(numbers(points.exec(answer)?.slice(1) ?? [])).toEqual(turns);
    const test = over(times(gain, pool.portions), exact(pool.tests.length));
    const rate = perWeek(pool.tests, now);
    const portion = over(times(gain, exact(size)), SIXTEEN);
    // Pound for pound, and portion for portion as heavy as they were cut: where one gains and the other loses, that is told.
    const cut = over(
      minus(times(exact(readyCut), exact(size)), times(loadedAt(pool, price), meanOz(pool))),
      SIXTEEN,
    );
    const isOpposite = Math.sign(compare(gain, exact(0))) === -Math.sign(compare(cut, exact(0)));
    const contradiction =
      /per portion as cut, (?:buying|cutting) is \$([\d.]+) cheaper/.exec(answer)?.slice(1) ?? [];
    expect(numbers(contradiction)).toEqual(isOpposite ? [Math.abs(rounded(cut, 2))] : []);
    const told = isOpposite ? [test, times(test, rate)] : [portion, test, times(test, rate)];
    const found = saving.exec(answer)?.slice(1).filter(Boolean) ?? [];
    expect(numbers(found)).toEqual([...told.map((sum) => Math.abs(rounded(sum, 2))), rounded(rate, 1)]);
  });

  it('is told when a price that is announced turns it', () => {
    const gain = minus(loadedAt(STRIPLOIN, '9.30'), exact('12.60'));
    expect(reply('striploin from Fernhill 9.30 from november 1')).toContain(
      `That turns it from Nov 1: BUY ready-cut striploin, $${written(gain, 2)}/lb cheaper.`,
    );
  });
});

describe('portions', () => {
  const aboveOf = (test: Said): Fraction =>
    total(ounces(test).map((each) => (compare(each, exact(12)) > 0 ? minus(each, exact(12)) : exact(0))));
  const lost = total(STRIPLOIN.tests.map((test) => times(over(aboveOf(test), SIXTEEN), costOf(test))));
  const days = (now: string): number => Math.ceil(minutesBetween('2026-10-05T08:24', now) / (24 * 60));
  const inWeeks = (now: string): Fraction => over(times(lost, exact(7)), exact(days(now)));

  it('are heavy, by so much in the mean, and give so much away', () => {
    const all = STRIPLOIN.tests.flatMap(ounces);
    const off = minus(over(total(all), exact(all.length)), exact(12));
    const answer = reply('am I cutting heavy on striploin?');
    expect(
      numbers(/cut heavy: ([\d.]+) oz over its size in the mean \(([\d.]+) %\)/.exec(answer)?.slice(1) ?? []),
    ).toEqual([rounded(off, 2), rounded(over(times(HUNDRED, off), exact(12)), 1)]);
    expect(answer).toContain(`${all.length} portions of 6 tests`);
    expect(answer).toContain(
      `of ${all.length} weighed singly 0 under and ${all.filter((each) => compare(each, exact('12.5')) > 0).length} over tolerance`,
    );
    const given =
      /gives away \$([\d.]+) a portion, \$([\d.]+) a test, \$([\d.]+) a week/.exec(answer)?.slice(1) ?? [];
    expect(numbers(given)).toEqual(
      [over(lost, exact(all.length)), over(lost, exact(6)), inWeeks(FRIDAY)].map((sum) => rounded(sum, 2)),
    );
  });

  it('of one test: what it gives away, and in a week with those before it', () => {
    const [last] = STRIPLOIN.tests.slice(-1);
    const own = last === undefined ? exact(0) : times(over(aboveOf(last), SIXTEEN), costOf(last));
    const given = told(
      'striploin done',
      /gives away \$([\d.]+) a portion, \$([\d.]+) in this test\. Of late it gives away \$([\d.]+) a week \(6 tests/,
    );
    expect(numbers(given)).toEqual(
      [over(own, exact(14)), own, inWeeks('2026-10-21T08:30')].map((sum) => rounded(sum, 2)),
    );
  });

  it('lose so much in the pan', () => {
    const raw = TESTS[3] === undefined ? exact(0) : usable(TESTS[3]);
    const [lossOfRaw, servedOfPaid] = [
      over(minus(raw, exact('8.9')), raw),
      over(exact('8.4'), exact('13.4')),
    ];
    expect(reply('cooked weight 8.9')).toContain(
      `${rounded(times(HUNDRED, lossOfRaw), 1)} % of the raw portions`,
    );
    expect(reply('served 8.4')).toContain(
      `${rounded(times(HUNDRED, servedOfPaid), 1)} % of the weight paid for`,
    );
  });
});

it('orders what is enough on the average, and nine times in ten', () => {
  const wanted = over(times(exact(60), exact(12)), SIXTEEN);
  const plain = over(times(HUNDRED, wanted), STRIPLOIN.yieldPct);
  const piece = over(STRIPLOIN.received, exact(6));
  const up = (figure: Fraction, step: number): number =>
    Math.ceil(Number(written(over(figure, exact(step)), 9)));
  const pieces = Math.ceil(Number(written(over(plain, piece), 9)));
  const error = root(plus(over(ONE, exact(6)), over(ONE, exact(pieces))));
  const low = minus(STRIPLOIN.yieldPct, times(times(exact(T_90[5] ?? ''), STRIPLOIN.deviation), error));
  const sure = over(times(HUNDRED, wanted), low);
  const answer = reply('how much striploin for 60 12-ounce');
  expect(answer).toContain(
    `Buy ${up(plain, 0.1) / 10} lb of striploin for 60 portions of 12 oz, at ${rounded(STRIPLOIN.yieldPct, 1)} % yield`,
  );
  expect(answer).toContain(`That is ${pieces} pieces like those tested (mean ${rounded(piece, 2)} lb)`);
  expect(answer).toContain(
    `For a 90 % chance that it is enough: ${up(sure, 0.1) / 10} lb (${Math.ceil(Number(written(over(sure, piece), 9)))} pieces).`,
  );
});

it('shares the cost of the short loin to the cent', () => {
  // 20.8 lb at 6.95 less the trim; 3.1 lb worth 18.00 and 9.6 lb worth 11.90 share it in cents, the larger remainder first.
  const cents = times(
    HUNDRED,
    minus(times(exact('20.8'), exact('6.95')), times(exact('0.9'), exact('1.80'))),
  );
  const values = [times(exact('3.1'), exact(18)), times(exact('9.6'), exact('11.90'))];
  const shares = values.map((value) => over(times(cents, value), total(values)));
  const whole = shares.map((share) => share.over / share.under);
  const rest = shares.map((share, at) => minus(share, exact(String(whole[at] ?? 0n))));
  const left = cents.over / cents.under - whole.reduce((sum, share) => sum + share, 0n);
  const larger = compare(rest[0] ?? ONE, rest[1] ?? ONE) > 0 ? 0 : 1;
  const expected = whole.map((share, at) => Number(at === larger ? share + left : share) / 100);
  const answer = reply('share the cost of the short loin');
  expect([...answer.matchAll(/carries \$([\d.]+)/g)].map(([, share]) => Number(share))).toEqual(expected);
  expect(numbers(told('share the cost of the short loin', /market value, \$([\d.]+) to share/))).toEqual([
    rounded(over(cents, HUNDRED), 2),
  ]);
});

it('tells no cutter what anything costs', async () => {
  const { turns } = await play(open, shift);
  const cutters = (turns as unknown as readonly { from: string; reply: string }[]).filter(({ from }) =>
    ['sefa', 'joris'].includes(from),
  );
  expect(cutters.length).toBeGreaterThan(30);
  expect(cutters.filter(({ reply: said }) => said.includes('$'))).toEqual([]);
});

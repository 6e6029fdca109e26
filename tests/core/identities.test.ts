// What must hold of every cutting test, whatever the numbers (the identities of the textbooks' yield forms).
import { expect, test } from 'vitest';
import type { Decimal } from '../../src/core/decimal.ts';
import type { Fact } from '../../src/core/facts.ts';
import { type Figures } from '../../src/core/figures.ts';
import { costOf } from '../../src/core/money.ts';
import { EMPTY_POOL } from '../../src/core/pool.ts';
import { testVerdict } from '../../src/core/verdict.ts';
import { figuresOf } from './given.ts';
import { type Cut, cut, d, fc, figure } from './property.ts';

const ran = ({ received, weighings, portioned }: Cut): Figures =>
  figuresOf(received, ...weighings, portioned);

/** Equal but for the rounding of quotients at 40 digits. */
const expectSame = (one: Decimal | undefined, other: Decimal | undefined): void => {
  expect(one, 'a figure that must be there').toBeDefined();
  expect(one?.toFixed(25)).toBe(other?.toFixed(25));
};

const costsOf = (found: Figures): NonNullable<Figures['costs']> => {
  if (found.costs === undefined) throw new Error('a test that balances and has a price must have costs');
  return found.costs;
};

test('parts, portions and loss are the whole piece, to the last digit', () => {
  fc.assert(
    fc.property(cut({ credits: true }), (piece) => {
      const found = ran(piece);
      const parts = found.parts.reduce((total, { grams }) => total.plus(grams), d('0'));
      const whole = parts.plus(found.portions?.grams ?? 0).plus(found.unaccountedGrams);
      expect(whole.eq(piece.received.grams)).toBe(true);
    }),
  );
});

test('the yields of parts, portions and loss are 100 %', () => {
  fc.assert(
    fc.property(cut({ credits: true }), (piece) => {
      const found = ran(piece);
      const parts = found.parts.reduce((total, { yieldPct }) => total.plus(yieldPct), found.unaccountedPct);
      expectSame(parts.plus(found.portions?.yieldPct ?? 0), d('100'));
    }),
  );
});

test('by-product value and what the portions carry are what was paid', () => {
  fc.assert(
    fc.property(cut({ credits: true }), (piece) => {
      const found = ran(piece);
      const carried = costOf(piece.portioned.grams ?? d('0'), costsOf(found).usableCostPerLb);
      expectSame(carried.plus(found.creditTotal), found.purchaseCost);
    }),
  );
});

test('the cost factor is 1 ÷ yield where no part is worth anything', () => {
  fc.assert(
    fc.property(cut({ credits: false }), (piece) => {
      const found = ran(piece);
      expectSame(costsOf(found).costFactor.times(found.portions?.yieldPct ?? 0), d('100'));
    }),
  );
});

test('the cost factor is below 1 ÷ yield where a part is worth something', () => {
  fc.assert(
    fc.property(cut({ credits: true }), (piece) => {
      const found = ran(piece);
      fc.pre(found.creditTotal.gt(0));
      expect(
        costsOf(found)
          .costFactor.times(found.portions?.yieldPct ?? 0)
          .lt(100),
      ).toBe(true);
    }),
  );
});

test('a piece of another size, cut alike, has the same yields and costs per pound', () => {
  fc.assert(
    fc.property(cut({ credits: true }), fc.integer({ min: 2, max: 50 }), (piece, times) => {
      const larger = {
        received: { ...piece.received, grams: piece.received.grams.times(times) },
        weighings: piece.weighings.map((part) => ({ ...part, grams: part.grams.times(times) })),
        portioned: { ...piece.portioned, grams: piece.portioned.grams?.times(times) },
      };
      const [small, large] = [ran(piece), ran(larger)];
      expectSame(large.portions?.yieldPct, small.portions?.yieldPct);
      small.parts.forEach(({ yieldPct }, index) => {
        expectSame(large.parts[index]?.yieldPct, yieldPct);
      });
      expectSame(costsOf(large).usableCostPerLb, costsOf(small).usableCostPerLb);
      expectSame(costsOf(large).costFactor, costsOf(small).costFactor);
    }),
  );
});

test('the order in which parts and portions are weighed does not matter', () => {
  const shuffled = cut({ credits: true }).chain((piece) => {
    const said: readonly Fact[] = [...piece.weighings, piece.portioned];
    return fc.record({
      piece: fc.constant(piece),
      order: fc.shuffledSubarray([...said], { minLength: said.length }),
    });
  });
  fc.assert(
    fc.property(shuffled, ({ piece, order }) => {
      const [straight, mixed] = [ran(piece), figuresOf(piece.received, ...order)];
      const byName = ({ parts, ...rest }: Figures) => ({
        ...rest,
        parts: [...parts].sort((one, other) => (one.part < other.part ? -1 : 1)),
      });
      expect(JSON.stringify(byName(mixed))).toBe(JSON.stringify(byName(straight)));
    }),
  );
});

test('a listed weight of every portion tells the same as their total', () => {
  fc.assert(
    fc.property(
      cut({ credits: true }),
      fc.array(figure(2, 40), { minLength: 1, maxLength: 30 }),
      (piece, list) => {
        const total = list.reduce((grams, each) => grams.plus(each), d('0'));
        const received = { ...piece.received, grams: piece.received.grams.plus(total) };
        const counted: Fact = { type: 'portioned', mode: 'set', count: list.length };
        const byList = figuresOf(received, counted, { type: 'listed', eachGrams: list });
        const byTotal = figuresOf(received, counted, { type: 'portioned', mode: 'set', grams: total });
        expect(byList.portions?.grams.eq(total)).toBe(true);
        expectSame(byList.portions?.meanGrams, byTotal.portions?.meanGrams);
        expectSame(byList.costs?.portionCost, byTotal.costs?.portionCost);
      },
    ),
  );
});

test('at each of the three turning points both cost the same', () => {
  fc.assert(
    fc.property(cut({ credits: true }), figure(2, 40), (piece, readyCutPerLb) => {
      const verdict = testVerdict({ figures: ran(piece), readyCutPerLb, pool: EMPTY_POOL });
      const perLb = verdict.breakEvenPricePerLb ?? d('0');
      const turned = verdict.breakEvenReadyCutPerLb ?? d('0');
      fc.pre(perLb.gt(0) && turned.gt(0));
      const atPrice = ran({ ...piece, received: { ...piece.received, perLb } });
      const savings = [
        testVerdict({ figures: atPrice, readyCutPerLb, pool: EMPTY_POOL }),
        testVerdict({ figures: ran(piece), readyCutPerLb: turned, pool: EMPTY_POOL }),
      ].map(({ savingPerLb, choice }) => `${savingPerLb?.toFixed(25) ?? 'none'} ${choice}`.replace('-', ''));
      expect(savings).toEqual([`${d('0').toFixed(25)} close`, `${d('0').toFixed(25)} close`]);
    }),
  );
});

test('with the portions at the break-even yield, cutting saves nothing', () => {
  fc.assert(
    fc.property(cut({ credits: true }), figure(2, 40), (piece, readyCutPerLb) => {
      const { breakEvenYieldPct } = testVerdict({ figures: ran(piece), readyCutPerLb, pool: EMPTY_POOL });
      const grams = breakEvenYieldPct?.times(piece.received.grams).div(100) ?? d('0');
      const others = piece.weighings.reduce((total, part) => total.plus(part.grams), grams);
      fc.pre(grams.gt(0) && others.lte(piece.received.grams));
      const there = ran({ ...piece, portioned: { ...piece.portioned, grams } });
      expectSame(testVerdict({ figures: there, readyCutPerLb, pool: EMPTY_POOL }).savingPerLb?.abs(), d('0'));
    }),
  );
});

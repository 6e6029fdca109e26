// What is kept of a closed test in its row: plain figures by name, and the names of who supplied and who cut it.
import type { Decimal } from './decimal.ts';
import { figure } from './entry-json.ts';
import { type Figures, figures } from './figures.ts';
import { portionRow } from './heavy.ts';
import { type Kitchen, poolOf, readyCutOf } from './kitchen.ts';
import { cutterOf } from './pools.ts';
import type { Test } from './test.ts';
import { testVerdict } from './verdict.ts';

export type PastFigures = Readonly<Record<string, string>>;

/** Under which the weight of a part is kept. No other name begins so. */
const PART = 'part:';

/** The parts that were weighed in a test, and their weights as plain figures. */
export const partsIn = (row: PastFigures): readonly (readonly [part: string, grams: string])[] =>
  Object.entries(row).flatMap(([key, grams]) =>
    key.startsWith(PART) ? [[key.slice(PART.length), grams] as const] : [],
  );

export function pastFigures(kitchen: Kitchen, test: Test): PastFigures {
  const found = figures(test, kitchen.settings);
  const { receivedGrams, portions, costs, pricePerLb } = found;
  const readyCutPerLb = readyCutOf(kitchen, test.item)?.perLb;
  const { choice, breakEvenReadyCutPerLb: comparedCostPerLb } = testVerdict({
    figures: found,
    readyCutPerLb,
    pool: poolOf(kitchen, test.item),
  });
  return {
    ...given({ receivedGrams }),
    ...portionRow(test, kitchen.settings),
    ...given({
      portionGrams: portions?.grams,
      yieldPct: portions?.yieldPct,
      pricePerLb,
      usableCostPerLb: costs?.usableCostPerLb,
      comparedCostPerLb,
    }),
    ...portionFigures(test, portions),
    ...cutting(test, found),
    ...(choice === 'unknown' ? {} : { choice }),
    ...(test.closedFlagged ? { flagged: '1' } : {}),
  };
}

/** Only what has a value. */
const given = (all: Readonly<Record<string, Decimal | undefined>>): PastFigures =>
  Object.fromEntries(
    Object.entries(all).flatMap(([key, value]) => (value === undefined ? [] : [[key, figure(value)]])),
  );

/** How many, and what the mean one weighs against its size. */
function portionFigures({ received }: Test, portions: Figures['portions']): PastFigures {
  const { count, meanGrams, targetGrams } = portions ?? {};
  return {
    ...(received.pieces === undefined ? {} : { pieces: String(received.pieces) }),
    ...(count === undefined ? {} : { count: String(count) }),
    ...given({ meanGrams, targetGrams }),
  };
}

/** From whom, by whom, what came off, and what the work took. */
function cutting(test: Test, { parts, labor, packingCost, costs }: Figures): PastFigures {
  const { supplier } = test.received;
  return {
    ...(supplier === undefined ? {} : { supplier }),
    cutter: cutterOf(test),
    ...Object.fromEntries(parts.map(({ part, grams }) => [`${PART}${part}`, figure(grams)])),
    ...given({
      laborMinutes: labor.minutes,
      laborCost: labor.cost,
      packingCost,
      loadedCostPerLb: costs?.loadedCostPerLb,
    }),
  };
}

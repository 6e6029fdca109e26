// A test under the names that the outside knows: weights in pounds, portions in ounces, prices per pound.
import type { Decimal } from '../core/decimal.ts';
import { figure, type Json } from '../core/entry-json.ts';
import { type CostFigures, type Figures, figures } from '../core/figures.ts';
import { type Kitchen, poolOf, readyCutOf } from '../core/kitchen.ts';
import { fromGrams } from '../core/quantity.ts';
import { countOf, type Test } from '../core/test.ts';
import { testVerdict } from '../core/verdict.ts';

type Fields = Record<string, Json>;

/** Only what has a value appears. */
function given(fields: Readonly<Record<string, Decimal | undefined>>): Fields {
  const out: Fields = {};
  for (const [name, value] of Object.entries(fields)) if (value !== undefined) out[name] = figure(value);
  return out;
}

const inLb = (grams: Decimal): Decimal => fromGrams(grams, 'lb');

export function testJson(kitchen: Kitchen, test: Test): Json {
  const all = figures(test, kitchen.settings);
  const { pricePerLb, purchaseCost, creditTotal, unaccountedGrams, costs } = all;
  return {
    item: test.item,
    status: test.status,
    ...given({ receivedLb: inLb(all.receivedGrams), pricePerLb, purchaseCost }),
    parts: all.parts.map(partJson),
    ...portionsJson(test, all),
    ...given({ unaccountedLb: inLb(unaccountedGrams), creditTotal }),
    ...costsJson(costs),
    verdict: verdictJson(kitchen, test, all),
    flags: all.overweight ? ['overweight'] : [],
  };
}

function partJson({ part, role, grams, creditPerLb, yieldPct }: Figures['parts'][number]): Json {
  return { part, role, ...given({ weightLb: inLb(grams), creditPerLb, yieldPct }) };
}

function portionsJson(test: Test, { portions }: Figures): Fields {
  const count = portions?.count ?? countOf(test.portions);
  const target = portions === undefined ? test.portions.batches.at(-1)?.eachGrams : portions.targetGrams;
  const fields: Fields = {
    ...(count === undefined ? {} : { count }),
    ...given({
      targetOz: target && fromGrams(target, 'oz'),
      weightLb: portions && inLb(portions.grams),
      meanOz: portions?.meanGrams && fromGrams(portions.meanGrams, 'oz'),
      yieldPct: portions?.yieldPct,
    }),
  };
  return Object.keys(fields).length === 0 ? {} : { portions: fields };
}

function costsJson(costs: CostFigures | undefined): Fields {
  if (costs === undefined) return {};
  const { usableCostPerLb, costFactor, portionCost, loadedCostPerLb, loadedPortionCost } = costs;
  return given({ usableCostPerLb, costFactor, portionCost, loadedCostPerLb, loadedPortionCost });
}

function verdictJson(kitchen: Kitchen, test: Test, all: Figures): Json {
  const readyCutPerLb = readyCutOf(kitchen, test.item)?.perLb;
  const { choice, savingPerLb, breakEvenPricePerLb } = testVerdict({
    figures: all,
    readyCutPerLb,
    pool: poolOf(kitchen, test.item),
  });
  return { choice, ...given({ readyCutPerLb, savingPerLb, breakEvenPricePerLb }) };
}

// "cooked weight 8.9", "served 8.4": what the pan left of the portions, and what a served pound costs.
import { type CookingFigures, cookingFigures } from '../core/cooking.ts';
import { decimal } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import { OVERWEIGHT_TOLERANCE } from '../core/figures.ts';
import type { Grams } from '../core/quantity.ts';
import { list, money, percent, price, type Reply, say, sayCost, size, weight } from '../core/reply.ts';
import type { Test } from '../core/test.ts';
import { figuresOf, labelOf, line } from './card.ts';
import {
  answered,
  asks,
  confirm,
  type Decision,
  type Intent,
  lacking,
  recorded,
  refused,
  type Response,
  type Scene,
} from './intent.ts';
import { testAtHand, withTest } from './route.ts';

type Said = EntryOf<'cooked'> | EntryOf<'served'>;
type Cooked = Said;

export const cooked: Intent<'cooked'> = {
  slots: ['weight', 'item'],
  decide: (scene, entry) => decideCooked(scene, entry),
};
export const served: Intent<'served'> = {
  slots: ['weight', 'item'],
  decide: (scene, entry) => decideCooked(scene, entry),
};

/** Portions are often cooked after the test was closed: an open test with portions goes first, else the newest closed one. */
function decideCooked(scene: Scene, entry: Said): Decision {
  const asked = entry.test === undefined ? undefined : scene.kitchen.tests.get(entry.test);
  const test =
    asked ?? testAtHand(scene, entry.item, (each) => figuresOf(scene, each).portions !== undefined);
  if (test !== undefined) return decideFor(scene, test, entry);
  if (testAtHand(scene, entry.item, () => true) !== undefined) return refused(say('cooked-needs-portions'));
  return withTest(scene, entry, () => refused(say('cooked-needs-portions')));
}

function decideFor(scene: Scene, test: Test, entry: Said): Decision {
  const before = entry.kind === 'cooked' ? test.cookedGrams : test.servedGrams;
  const there = line(say('of-item', { item: list([labelOf(scene, test)]), of: list([said(entry)]) }));
  if (before?.eq(entry.weight) === true) return answered(say('already', { of: list([there]) }));
  const doubt =
    cookedDoubt(scene, test, entry) ??
    (before !== undefined && entry.sure !== true ? replaced(entry, before, test) : undefined);
  if (doubt !== undefined) return doubt;
  return recorded(
    [{ test: test.id, item: test.item, fact: { type: entry.kind, grams: entry.weight } }],
    (now) => respondCooked(now, test, entry),
  );
}

const said = ({ kind, weight: grams }: Said): Reply =>
  say(kind === 'cooked' ? 'cooked-weight' : 'served-weight', { weight: weight(grams) });

const HALF = decimal('0.5');

/** No pan makes meat heavier; that it takes more than half is asked once (USDA, Cooking Yields for Meat and Poultry, 2014: 61 % and more). */
export function cookedDoubt(scene: Scene, test: Test, entry: Cooked): Decision | undefined {
  const raw = figuresOf(scene, test).portions?.grams;
  const from = (entry.kind === 'served' ? test.cookedGrams : undefined) ?? raw;
  if (raw === undefined || from === undefined) return undefined;
  const wants = { ...lacking(entry, 'weight'), held: { ...lacking(entry, 'weight').held, test: test.id } };
  const args = {
    weight: weight(entry.weight),
    from: weight(from),
    share: percent(entry.weight.div(raw).times(100)),
  };
  if (entry.weight.gt(from.plus(OVERWEIGHT_TOLERANCE)))
    return asks(say('ask-cooked-heavier', args), { wants });
  const held: Said = { ...entry, test: test.id };
  return entry.weight.lt(raw.times(HALF)) && entry.sure !== true
    ? confirm(say('ask-cooked-half', args), held, wants)
    : undefined;
}

function replaced(entry: Said, before: Grams, { id }: Test): Decision {
  return confirm(say('ask-cooked-replace', { before: weight(before), weight: weight(entry.weight) }), {
    ...entry,
    test: id,
  });
}

export function respondCooked(scene: Scene, { id }: Test, entry: Said): Response {
  const test = scene.kitchen.tests.get(id);
  const found = test && cookingFigures(test, figuresOf(scene, test));
  if (test === undefined || found === undefined) return { say: [] };
  const words = list([said(entry), ...(entry.kind === 'cooked' ? lossWords(found) : servedWords(found))]);
  return { say: [say('of-item', { item: list([labelOf(scene, test)]), of: words }), ...costLines(found)] };
}

const lossWords = ({ lossGrams, lossOfRawPct, lossOfPaidPct }: CookingFigures): readonly Reply[] =>
  lossGrams === undefined || lossOfRawPct === undefined || lossOfPaidPct === undefined
    ? []
    : [
        say('cooking-loss', {
          weight: weight(lossGrams),
          raw: percent(lossOfRawPct),
          paid: percent(lossOfPaidPct),
        }),
      ];

const servedWords = ({ servedOfRawPct, servedOfPaidPct }: CookingFigures): readonly Reply[] =>
  servedOfRawPct === undefined || servedOfPaidPct === undefined
    ? []
    : [say('served-share', { raw: percent(servedOfRawPct), paid: percent(servedOfPaidPct) })];

function costLines({
  of,
  servedCostPerLb,
  servedPortionCost,
  servedPortionGrams,
}: CookingFigures): readonly Reply[] {
  if (servedCostPerLb === undefined) return [];
  const portion =
    servedPortionCost === undefined || servedPortionGrams === undefined
      ? []
      : [sayCost('served-portion', { cost: money(servedPortionCost), size: size(servedPortionGrams) })];
  return [line(sayCost('served-cost', { what: of, cost: price(servedCostPerLb) }), ...portion)];
}

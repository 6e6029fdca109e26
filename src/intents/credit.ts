// "trim is worth 1.50": what a part is credited at, in this test and, until told otherwise, in later ones.
import type { Decimal } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import type { TestId } from '../core/facts.ts';
import { creditOf, openTests } from '../core/kitchen.ts';
import { money, name, saidPrice, say, sayCost, weight } from '../core/reply.ts';
import { creditIn, type Test } from '../core/test.ts';
import { cardCosts, figuresOf, line, ofTest } from './card.ts';
import {
  answered,
  type Decision,
  type Intent,
  recorded,
  refused,
  type Response,
  type Scene,
} from './intent.ts';
import { itemFor, openTestFor, withTest } from './route.ts';

type Credit = EntryOf<'credit'>;

export const credit: Intent<'credit'> = {
  slots: ['part', 'credit', 'item', 'number', 'day'],
  decide: (scene, entry) => {
    const test = openTestFor(scene, entry.item);
    if (test !== undefined) return decideCredit(scene, { entry, item: test.item, test });
    if (openTests(scene.kitchen).length > 0 && (entry.item ?? scene.carried) === undefined)
      return withTest(scene, entry, () => ({ is: 'ignored' }));
    const item = itemFor(scene, entry.item);
    return item === undefined ? refused(say('nothing-open')) : decideCredit(scene, { entry, item });
  },
};

function decideCredit(
  scene: Scene,
  { entry, item, test }: { entry: Credit; item: string; test?: Test },
): Decision {
  const known = test === undefined ? creditOf(scene.kitchen, item, entry.part) : creditIn(test, entry.part);
  if (known?.eq(entry.credit) === true) {
    const args = { part: name(entry.part), price: saidPrice(entry.credit) };
    return answered(line(sayCost('already-worth', args, say('credit-noted', args))));
  }
  const fact = { type: 'credited', item, part: entry.part, perLb: entry.credit } as const;
  return recorded([{ fact, item, test: test?.id }], (now) =>
    respondCredit(now, { ...entry, item, test: test?.id }),
  );
}

interface Credited {
  readonly part: string;
  readonly credit: Decimal;
  readonly item: string;
  readonly test?: TestId;
}

/** The credit as it holds, and what it does to the test. */
export function respondCredit(scene: Scene, { part, credit: perLb, item, test: id }: Credited): Response {
  const read = sayCost(
    'credit-set',
    { part: name(part), price: saidPrice(perLb) },
    say('credit-noted', { part: name(part) }),
  );
  const test = id === undefined ? undefined : scene.kitchen.tests.get(id);
  if (test === undefined) return { say: [line(read, say('for-later-tests', { item: name(item) }))] };
  const figure = figuresOf(scene, test);
  const weighed = figure.parts.find((each) => each.part === part);
  const value =
    weighed === undefined
      ? say('not-weighed-yet')
      : sayCost('credit-value', { weight: weight(weighed.grams), value: money(weighed.value) });
  return { say: [ofTest(scene, test, read, value, ...cardCosts(figure))] };
}

// "trim is worth 1.50": what a part is credited at, in this test and, until told otherwise, in later ones.
import { name, percent, price, say, sayCost, weight } from '../core/reply.ts';
import { creditOf } from '../core/kitchen.ts';
import { cardCosts, figuresOf, line, ofTest } from './card.ts';
import { answered, type Intent, recorded, refused, type Response, type Scene } from './intent.ts';
import { itemFor, openTestFor } from './route.ts';
import type { EntryOf } from '../core/entry.ts';

export const credit: Intent<'credit'> = {
  slots: ['part', 'credit', 'item', 'number'],
  decide: (scene, entry) => {
    const test = openTestFor(scene, entry.item);
    const item = test?.item ?? itemFor(scene, entry.item);
    if (item === undefined) return refused(say('nothing-open'));
    const known = test === undefined ? creditOf(scene.kitchen, item, entry.part) : test.credits[entry.part];
    if (known?.eq(entry.credit) === true)
      return answered(line(sayCost('already-worth', { part: name(entry.part), price: price(entry.credit) })));
    const fact = { type: 'credited', item, part: entry.part, perLb: entry.credit } as const;
    return recorded([{ fact, item, test: test?.id }], (now) => respondCredit(now, { entry, item, test: test?.id }));
  },
};

/** The credit as it holds, and what it does to the test. */
export function respondCredit(scene: Scene, to: { entry: EntryOf<'credit'>; item: string; test?: number }): Response {
  const { part, credit: perLb } = to.entry;
  const read = scene.seesCosts ? sayCost('credit-set', { part: name(part), price: price(perLb) }) : say('credit-noted', { part: name(part) });
  const test = to.test === undefined ? undefined : scene.kitchen.tests.get(to.test);
  if (test === undefined) return { say: [line(read, say('for-later-tests', { item: name(to.item) }))] };
  const figure = figuresOf(scene, test);
  const weighed = figure.parts.find((each) => each.part === part);
  const value = weighed === undefined ? [say('not-weighed-yet')] : [sayCost('credit-value', { weight: weight(weighed.grams), share: percent(weighed.yieldPct), value: { is: 'money', amount: weighed.value } })];
  return { say: [ofTest(scene, test, read, ...value, ...cardCosts(figure))] };
}

// "ribeye is 7.95 now": what the item costs from now on; an open test without a price takes it.
import type { EntryOf } from '../core/entry.ts';
import { openTests, poolOf, priceOf } from '../core/kitchen.ts';
import { poolFigures } from '../core/pool.ts';
import { list, name, price as perLb, type Reply, say, sayCost } from '../core/reply.ts';
import type { Test } from '../core/test.ts';
import { cardCosts, figuresOf, line } from './card.ts';
import { answered, type Intent, recorded, type Scene } from './intent.ts';

export const price: Intent<'price'> = {
  slots: ['item', 'price', 'number'],
  decide: (scene, entry) => {
    const { item, price: value } = entry;
    const open = openTests(scene.kitchen).filter((test) => test.item === item);
    const lacking = open.find((test) => test.received.perLb === undefined && test.received.cost === undefined);
    const known = priceOf(scene.kitchen, item)?.perLb;
    if (lacking === undefined && known?.eq(value) === true)
      return answered(sayCost('already', { of: list([sayCost('price-set', { item: name(item), price: perLb(value) })]) }));
    const fact = { type: 'priced', item, perLb: value } as const;
    return recorded([{ fact, item, test: lacking?.id }], (now) => ({ say: replies(now, entry, { took: lacking, kept: open.find((test) => test !== lacking) }) }));
  },
};

function replies(scene: Scene, entry: EntryOf<'price'>, tests: { took?: Test; kept?: Test }): readonly Reply[] {
  const { item, price: value } = entry;
  const took = tests.took && scene.kitchen.tests.get(tests.took.id);
  const said: Reply[] = [sayCost('price-set', { item: name(item), price: perLb(value) })];
  if (took !== undefined) said.push(...cardCosts(figuresOf(scene, took)));
  else said.push(...keptAndUsable(scene, entry, tests.kept));
  return scene.seesCosts ? [line(...said)] : [say('price-noted', { item: name(item) })];
}

function keptAndUsable(scene: Scene, { item, price: value }: EntryOf<'price'>, kept: Test | undefined): readonly Reply[] {
  const pooled = poolFigures(poolOf(scene.kitchen, item), { pricePerLb: value });
  const own = kept === undefined ? undefined : figuresOf(scene, kept).pricePerLb;
  return [
    ...(own === undefined ? [] : [sayCost('test-keeps-price', { price: perLb(own) })]),
    ...(pooled?.costs === undefined ? [say('no-yield-yet')] : [sayCost('usable-at-yield', { cost: perLb(pooled.costs.usableCostPerLb), tests: pooled.tests })]),
  ];
}

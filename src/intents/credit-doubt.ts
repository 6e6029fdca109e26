// "trim 1.1 at 1.50" is what the trim is worth; "trim 1.1 at 7.40" may as well be what the piece costs: that is asked.
import { decimal } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import { priceOf } from '../core/kitchen.ts';
import { name, saidPrice, say } from '../core/reply.ts';
import type { Test } from '../core/test.ts';
import { askedOf, figuresOf } from './card.ts';
import { asks, type Decision, lacking, type Scene } from './intent.ts';

/** From this share of the price of the piece on: what is cut off is seldom worth as much (common practice, no source). */
const NEAR = decimal('0.7');

export function creditDoubt(scene: Scene, test: Test, entry: EntryOf<'weigh'>): Decision | undefined {
  const { at, ...worth } = entry;
  if (at !== true || entry.credit === undefined) return undefined;
  const paid = figuresOf(scene, test).pricePerLb ?? priceOf(scene.kitchen, test.item, scene.at)?.perLb;
  if (paid !== undefined && entry.credit.lt(paid.times(NEAR))) return undefined;
  const asked = say('ask-worth', { part: name(entry.part), price: saidPrice(entry.credit) });
  return asks(askedOf(scene, test, asked), {
    choices: { yes: worth },
    again: { said: entry, accepts: worth },
    wants: lacking(entry, 'credit'),
  });
}

// "took 25 minutes": the cutter's time, and what an hour of it costs.
import type { EntryOf } from '../core/entry.ts';
import { laborRateOf } from '../core/kitchen.ts';
import { money, number, say, sayCost } from '../core/reply.ts';
import type { Test } from '../core/test.ts';
import { cardCosts, figuresOf, line, ofTest } from './card.ts';
import { answered, asks, type Decision, type Intent, recorded, type Response, type Scene } from './intent.ts';
import { openTestFor, withTest } from './route.ts';

type Labor = EntryOf<'labor'>;

export const labor: Intent<'labor'> = {
  slots: ['minutes', 'rate', 'item'],
  decide: (scene, entry) => {
    if (entry.minutes === undefined) return rateOnly(scene, entry);
    return withTest(scene, entry, (test) => minutes(scene, test, entry));
  },
};

/** A rate without minutes holds for the open test and for later ones. */
function rateOnly(scene: Scene, entry: Labor): Decision {
  const { rate } = entry;
  if (rate === undefined) return { is: 'ignored' };
  const test = openTestFor(scene, entry.item);
  const fact = { type: 'labored', ratePerHour: rate } as const;
  return recorded([{ fact, test: test?.id, item: test?.item }], (now) => ({
    say: [line(now.seesCosts ? sayCost('labor-rate-set', { rate: money(rate) }) : say('labor-rate-noted'))],
  }));
}

function minutes(scene: Scene, test: Test, entry: Labor): Decision {
  const { minutes: said, rate } = entry;
  const there = test.labor.minutes;
  if (said !== undefined && there !== undefined && entry.sure !== true) {
    const same = there.eq(said) && (rate === undefined || test.labor.ratePerHour?.eq(rate) === true);
    if (same) return answered(ofTest(scene, test, say('already-minutes', { minutes: number(said, 1) })));
    if (!there.eq(said)) {
      const replace: Labor = { ...entry, sure: true };
      const add: Labor = { ...entry, minutes: there.plus(said), sure: true };
      const args = { before: number(there, 1), minutes: number(said, 1), sum: number(there.plus(said), 1) };
      return asks(say('ask-labor-add-or-replace', args), { choices: { add, replace }, again: { said: entry, accepts: replace } });
    }
  }
  const ratePerHour = rate ?? test.labor.ratePerHour ?? laborRateOf(scene.kitchen);
  const fact = { type: 'labored', minutes: said, ratePerHour } as const;
  return recorded([{ fact, test: test.id, item: test.item }], (now) => respondLabor(now, test));
}

/** The minutes as they stand, what they cost, and whether they count. */
export function respondLabor(scene: Scene, { id }: Test): Response {
  const test = scene.kitchen.tests.get(id);
  if (test === undefined) return { say: [] };
  const figure = figuresOf(scene, test);
  const { minutes: said, cost, avoidable } = figure.labor;
  if (said === undefined) return { say: [ofTest(scene, test, say('labor-none'))] };
  if (cost === undefined) return { say: [ofTest(scene, test, say('labor-no-rate', { minutes: number(said, 1) }), say('labor-left-out'))] };
  const read = scene.seesCosts ? sayCost('labor', { minutes: number(said, 1), cost: money(cost) }) : say('minutes', { minutes: number(said, 1) });
  return { say: [ofTest(scene, test, read, ...(avoidable ? [] : [say('labor-fixed')]), ...cardCosts(figure))] };
}

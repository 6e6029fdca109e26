// "took 25 minutes": the cutter's time, and what an hour of it costs.
import { type Decimal, ZERO } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import { laborRateOf } from '../core/kitchen.ts';
import { LABOR_RATE_KEY } from '../core/memory.ts';
import { recall } from '../core/recall.ts';
import { date, number, type Reply, saidMoney, say, sayCost } from '../core/reply.ts';
import type { Test } from '../core/test.ts';
import { askedOf, figuresOf, line, ofTest } from './card.ts';
import { loadedCosts, minutesWords } from './labor-words.ts';
import { answered, asks, type Decision, type Intent, recorded, type Response, type Scene } from './intent.ts';
import { fromDay } from './later.ts';
import { openTestFor, withTest } from './route.ts';

type Labor = EntryOf<'labor'>;

export const labor: Intent<'labor'> = {
  slots: ['minutes', 'rate', 'number', 'item', 'day'],
  decide: (scene, entry) => {
    if (entry.minutes === undefined) return fromDay(scene, entry.day, (from) => rateOnly(scene, entry, from));
    return withTest(scene, entry, (test) => minutes(scene, test, entry));
  },
};

/** A rate without minutes holds for the open test and for later ones. */
function rateOnly(scene: Scene, entry: Labor, from: string | undefined): Decision {
  const { rate } = entry;
  if (rate === undefined) return { is: 'ignored' };
  if (from !== undefined) return rateFrom(scene, rate, from);
  const test = openTestFor(scene, entry.item);
  if (test?.labor.ratePerHour?.eq(rate) === true) return answered(ofTest(scene, test, ...sameLabor(test)));
  if (test === undefined && laborRateOf(scene.kitchen, scene.at)?.eq(rate) === true)
    return answered(line(...rateKnown(rate)));
  const doubt = test && otherRate(scene, test, entry);
  if (doubt !== undefined) return doubt;
  const fact = { type: 'labored', ratePerHour: rate } as const;
  return recorded([{ fact, test: test?.id, item: test?.item }], (now) => {
    const read = sayCost('labor-rate-set', { rate: saidMoney(rate) }, say('labor-rate-noted'));
    return test?.labor.minutes === undefined ? { say: [line(read)] } : respondLabor(now, test);
  });
}

/** A rate with a date is the kitchen's from then on; the open test keeps its own. */
function rateFrom(scene: Scene, ratePerHour: Decimal, from: string): Decision {
  const words = sayCost(
    'labor-rate-from',
    { rate: saidMoney(ratePerHour), date: date(from) },
    say('labor-rate-noted'),
  );
  const known = recall(scene.kitchen.memory, LABOR_RATE_KEY, from);
  if (known?.at === from && known.value.amount.eq(ratePerHour)) return answered(line(words));
  return recorded([{ fact: { type: 'labored', ratePerHour, from } }], () => ({ say: [line(words)] }));
}

function minutes(scene: Scene, test: Test, entry: Labor): Decision {
  const { minutes: said, rate } = entry;
  const there = test.labor.minutes;
  if (said !== undefined && there !== undefined && entry.sure !== true) {
    if (!there.eq(said)) return addOrReplace(scene, test, { entry, there, said });
    if (rate === undefined || test.labor.ratePerHour?.eq(rate) === true)
      return answered(ofTest(scene, test, ...sameLabor(test)));
  }
  const doubt = otherRate(scene, test, entry);
  if (doubt !== undefined) return doubt;
  const ratePerHour = rate ?? test.labor.ratePerHour ?? laborRateOf(scene.kitchen, scene.at);
  const fact = { type: 'labored', minutes: said, ratePerHour } as const;
  return recorded([{ fact, test: test.id, item: test.item }], (now) => respondLabor(now, test));
}

function addOrReplace(
  scene: Scene,
  test: Test,
  of: { entry: Labor; there: Decimal; said: Decimal },
): Decision {
  const { entry, there, said } = of;
  const replace: Labor = { ...entry, sure: true };
  const add: Labor = { ...entry, minutes: there.plus(said), sure: true };
  const args = { before: number(there, 1), minutes: number(said, 1), sum: number(there.plus(said), 1) };
  const asked = askedOf(scene, test, say('ask-labor-add-or-replace', args));
  return asks(asked, { choices: { add, replace }, again: { said: entry, accepts: replace } });
}

/** A second, different rate for the minutes of a test. */
function otherRate(scene: Scene, test: Test, entry: Labor): Decision | undefined {
  const there = test.labor.ratePerHour;
  if (entry.rate === undefined || there === undefined || there.eq(entry.rate) || entry.sure === true)
    return undefined;
  const args = { before: saidMoney(there), rate: saidMoney(entry.rate) };
  const asked = sayCost('ask-labor-rate', args, say('ask-labor-rate-hidden'));
  const sure: Labor = { ...entry, sure: true, test: test.id };
  const choices = { yes: sure, replace: sure };
  return asks(askedOf(scene, test, asked), { choices, again: { said: entry, accepts: sure } });
}

function sameLabor({ labor: { minutes: there, ratePerHour } }: Test): readonly Reply[] {
  if (there !== undefined) return [say('already-minutes', { minutes: number(there, 1) })];
  return rateKnown(ratePerHour ?? ZERO);
}

const rateKnown = (rate: Decimal): readonly Reply[] => [
  sayCost('already-rate', { rate: saidMoney(rate) }, say('labor-rate-noted')),
];

/** The minutes as they stand, what they cost, and whether they count. */
export function respondLabor(scene: Scene, { id }: Test): Response {
  const test = scene.kitchen.tests.get(id);
  if (test === undefined) return { say: [] };
  const figure = figuresOf(scene, test);
  const { minutes: said, cost, avoidable } = figure.labor;
  if (said === undefined) return { say: [ofTest(scene, test, say('labor-none'))] };
  if (cost === undefined)
    return { say: [ofTest(scene, test, minutesWords(said, cost), say('labor-left-out'))] };
  const fixed = avoidable ? [] : [say('labor-fixed')];
  return { say: [ofTest(scene, test, minutesWords(said, cost), ...fixed, ...loadedCosts(figure))] };
}

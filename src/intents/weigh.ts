// "trim 1.1": a part that came off, set or added to.
import { decimal, type Decimal } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import { creditOf, tareOf } from '../core/kitchen.ts';
import { OVERWEIGHT_TOLERANCE } from '../core/figures.ts';
import type { Grams } from '../core/quantity.ts';
import { list, name, percent, price, say, sayCost, weight } from '../core/reply.ts';
import type { Part, Test } from '../core/test.ts';
import { figuresOf, ofTest, overweightAsk, toGo } from './card.ts';
import { answered, asks, confirm, type Decision, type Intent, lacking, type NewFact, recorded, type Response, type Scene, showing } from './intent.ts';
import { withTest } from './route.ts';

type Weigh = EntryOf<'weigh'>;

export const weigh: Intent<'weigh'> = {
  slots: ['part', 'weight', 'mode', 'credit', 'item', 'container', 'told', 'tare', 'old', 'number'],
  decide: (scene, entry) =>
    withTest(scene, entry, (test) => {
      const tare = tareFor(scene, entry);
      if (entry.container !== undefined && tare === undefined)
        return asks(say('ask-tare', { container: name(entry.container) }), { wants: { held: entry, slot: 'tare' } });
      const net = tare === undefined ? entry.weight : entry.weight.minus(tare);
      if (!net.gt(0)) return asks(say('ask-below-tare', { part: name(entry.part) }), { wants: lacking(entry, 'weight') });
      return decideNet(scene, test, { entry, net, learned: learnedTare(entry) });
    }),
};

const tareFor = (scene: Scene, { container, tare }: Weigh): Grams | undefined => tare ?? (container === undefined ? undefined : tareOf(scene.kitchen, container));

/** A tare that was asked for with this entry is remembered like one that was told. */
const learnedTare = ({ container, tare }: Weigh): readonly NewFact[] =>
  container === undefined || tare === undefined ? [] : [{ fact: { type: 'tared', container, grams: tare } }];

interface Net {
  readonly entry: Weigh;
  readonly net: Grams;
  readonly learned: readonly NewFact[];
}

function decideNet(scene: Scene, test: Test, { entry, net, learned }: Net): Decision {
  const before = test.parts.find((part) => part.part === entry.part);
  if (entry.mode === 'set' && before?.grams.eq(net) === true && sameCredit(test, entry)) return repeated(scene, test, before);
  const after = entry.mode === 'add' ? (before?.grams ?? decimal('0')).plus(net) : net;
  const doubt = implausible(test, entry, after) ?? addOrReplace(scene, test, { entry, before, net });
  if (doubt !== undefined) return doubt;
  const creditPerLb = entry.credit ?? (test.credits[entry.part] === undefined ? creditOf(scene.kitchen, test.item, entry.part) : undefined);
  const fact = { type: 'weighed', part: entry.part, grams: net, mode: entry.mode, creditPerLb } as const;
  const decision = recorded([...learned, { test: test.id, item: test.item, fact }], (now) => respond(now, test, { ...entry, weight: net }));
  return net.eq(entry.weight) ? decision : showing(decision, { ...entry, weight: net });
}

const sameCredit = (test: Test, { credit, part }: Weigh): boolean => credit === undefined || test.credits[part]?.eq(credit) === true;

const repeated = (scene: Scene, test: Test, part: Part): Decision =>
  answered(ofTest(scene, test, say('already', { of: list([say('part-weight', { part: name(part.part), weight: weight(part.grams) })]) })));

const HALF = decimal('0.5');

/** More than the whole piece is never right; more than half of it is asked once. */
function implausible(test: Test, entry: Weigh, after: Grams): Decision | undefined {
  const { grams } = test.received;
  const args = { part: name(entry.part), weight: weight(after), received: weight(grams), share: percent(after.div(grams).times(100)) };
  if (after.gt(grams.plus(OVERWEIGHT_TOLERANCE))) return asks(say('ask-heavier-than-piece', args), { wants: lacking(entry, 'weight') });
  if (after.gt(grams.times(HALF)) && entry.sure !== true) return confirm(say('ask-over-half', args), entry, lacking(entry, 'weight'));
  return undefined;
}

/** A second, different amount for a part: on top, or in its place? */
function addOrReplace(scene: Scene, test: Test, said: { entry: Weigh; before: Part | undefined; net: Grams }): Decision | undefined {
  const { entry, before, net } = said;
  if (entry.mode === 'add' || entry.told === true || before === undefined || before.grams.eq(net)) return undefined;
  const { unaccountedGrams, overweight } = figuresOf(scene, test);
  if (overweight || net.gt(unaccountedGrams.plus(OVERWEIGHT_TOLERANCE))) return undefined;
  const replace: Weigh = { ...entry, told: true };
  const add: Weigh = { ...entry, mode: 'add', told: true };
  const args = { part: name(entry.part), before: weight(before.grams), weight: weight(net), sum: weight(before.grams.plus(net)) };
  return asks(say('ask-add-or-replace', args), { choices: { add, replace }, again: { said: entry, accepts: replace } });
}

/** The part as it now stands, its share, and what is left. */
export function respond(scene: Scene, { id }: Test, entry: { part: string; mode?: 'set' | 'add'; weight?: Decimal; container?: string }): Response {
  const test = scene.kitchen.tests.get(id);
  if (test === undefined) return { say: [] };
  const figure = figuresOf(scene, test);
  const part = figure.parts.find((each) => each.part === entry.part);
  if (part === undefined) return { say: [ofTest(scene, test, toGo(figure))] };
  const added = entry.mode === 'add' && entry.weight !== undefined && !part.grams.eq(entry.weight);
  const said = [
    added && entry.weight !== undefined
      ? say('part-added', { part: name(part.part), added: weight(entry.weight), weight: weight(part.grams) })
      : say('part-weight', { part: name(part.part), weight: weight(part.grams) }),
    ...(entry.container === undefined ? [] : [say('without-container', { container: name(entry.container) })]),
    say('share', { share: percent(part.yieldPct) }),
    ...(part.creditPerLb?.gt(0) === true ? [sayCost('worth', { price: price(part.creditPerLb) })] : []),
    toGo(figure),
  ];
  return { say: [ofTest(scene, test, ...said)], ask: overweightAsk(scene, test) };
}

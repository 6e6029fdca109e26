// "trim 1.1": a part that came off, set or added to.
import { decimal, type Decimal } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import { creditOf, tareOf } from '../core/kitchen.ts';
import type { Grams } from '../core/quantity.ts';
import { list, name, percent, type Reply, say, weight } from '../core/reply.ts';
import { creditIn, type Part, type Test } from '../core/test.ts';
import { figuresOf, leftOf, ofTest, overweightAsk, toGo, worth } from './card.ts';
import { creditDoubt } from './credit-doubt.ts';
import {
  answered,
  asks,
  type Decision,
  type Intent,
  lacking,
  type NewFact,
  recorded,
  type Response,
  type Scene,
  showing,
} from './intent.ts';
import { asLotWeight } from './lot-weight.ts';
import { withTest } from './route.ts';
import { weighDoubt } from './weigh-doubt.ts';

type Weigh = EntryOf<'weigh'>;

export const weigh: Intent<'weigh'> = {
  slots: [
    'part',
    'weight',
    'mode',
    'credit',
    'item',
    'container',
    'told',
    'tare',
    'old',
    'number',
    'sold',
    'at',
  ],
  decide: (scene, entry) =>
    asLotWeight(scene, entry) ??
    withTest(scene, entry, (test) => {
      const tare = tareFor(scene, entry);
      if (entry.container !== undefined && tare === undefined)
        return asks(say('ask-tare', { container: name(entry.container) }), {
          wants: { held: entry, slot: 'tare' },
        });
      const net = tare === undefined ? entry.weight : entry.weight.minus(tare);
      if (!net.gt(0)) return asks(belowTare({ ...entry, tare }), { wants: lacking(entry, 'weight') });
      const decision = decideNet(scene, test, { entry, net, tare });
      return net.eq(entry.weight) ? decision : showing(decision, { ...entry, weight: net });
    }),
};

const tareFor = (scene: Scene, { container, tare }: Weigh): Grams | undefined =>
  tare ?? (container === undefined ? undefined : tareOf(scene.kitchen, container));

export const belowTare = ({
  part,
  container = '',
  tare,
}: Pick<Weigh, 'part' | 'container' | 'tare'>): Reply =>
  say('ask-below-tare', { part: name(part), container: name(container), tare: weight(tare ?? decimal('0')) });

/** A tare that was asked for with this entry is remembered like one that was told. */
const learnedTare = ({ container, tare }: Weigh): readonly NewFact[] =>
  container === undefined || tare === undefined ? [] : [{ fact: { type: 'tared', container, grams: tare } }];

interface Net {
  readonly entry: Weigh;
  readonly net: Grams;
  readonly tare: Grams | undefined;
}

function decideNet(scene: Scene, test: Test, { entry, net, tare }: Net): Decision {
  const before = test.parts.find((part) => part.part === entry.part);
  if (
    entry.mode === 'set' &&
    before?.grams.eq(net) === true &&
    sameCredit(test, entry) &&
    isSoldAlready(test, entry)
  )
    return repeated(scene, test, before);
  const said = { entry, before, net };
  const doubt = creditDoubt(scene, test, entry) ?? weighDoubt(scene, test, said);
  if (doubt !== undefined) return doubt;
  const known = creditIn(test, entry.part) !== undefined;
  const creditPerLb = entry.credit ?? (known ? undefined : creditOf(scene.kitchen, test.item, entry.part));
  const { part, mode, container } = entry;
  const weighedIn = container === undefined ? {} : { container, tareGrams: tare };
  const fact = { type: 'weighed', part, grams: net, mode, creditPerLb, ...weighedIn } as const;
  const sold: readonly NewFact[] =
    entry.sold === true ? [{ test: test.id, item: test.item, fact: { type: 'sold', part: entry.part } }] : [];
  const facts = [...learnedTare(entry), { test: test.id, item: test.item, fact }, ...sold];
  return recorded(facts, (now) => respond(now, test, { ...entry, weight: net }));
}

const sameCredit = (test: Test, { credit, part }: Weigh): boolean =>
  credit === undefined || creditIn(test, part)?.eq(credit) === true;

const isSoldAlready = ({ products }: Test, { sold, part }: Weigh): boolean =>
  sold !== true || products.includes(part);

function repeated(scene: Scene, test: Test, { part, grams }: Part): Decision {
  const there = list([say('part-weight', { part: name(part), weight: weight(grams) })]);
  return answered(ofTest(scene, test, say('already', { of: there })));
}

interface Weighed {
  readonly part: string;
  readonly mode?: 'set' | 'add';
  readonly weight?: Decimal;
  readonly container?: string;
}

/** The part as it now stands, its share, and what is left. */
export function respond(scene: Scene, { id }: Test, entry: Weighed): Response {
  const test = scene.kitchen.tests.get(id);
  if (test === undefined) return { say: [] };
  const figure = figuresOf(scene, test);
  const part = figure.parts.find((each) => each.part === entry.part);
  if (part === undefined) return { say: [ofTest(scene, test, toGo(figure))] };
  const said = [
    entry.mode === 'add' && entry.weight !== undefined && !part.grams.eq(entry.weight)
      ? say('part-added', { part: name(part.part), added: weight(entry.weight), weight: weight(part.grams) })
      : say('part-weight', { part: name(part.part), weight: weight(part.grams) }),
    ...(entry.container === undefined
      ? []
      : [say('without-container', { container: name(entry.container) })]),
    say('share', { share: percent(part.yieldPct) }),
    ...worth(part),
    ...leftOf(figure),
  ];
  return { say: [ofTest(scene, test, ...said)], ask: overweightAsk(scene, test) };
}

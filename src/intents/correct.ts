// "no, 1.3", "make the trim 1.3", "no, striploin", "that was fat not trim": an entry was otherwise than said.
import type { BareNumber, EntryOf } from '../core/entry.ts';
import { fitsStage } from '../core/heat.ts';
import { measuredAs } from '../core/measured-as.ts';
import { perUnit } from '../core/money.ts';
import { openLots } from '../core/lots.ts';
import { name, say } from '../core/reply.ts';
import type { Test } from '../core/test.ts';
import { readingSinceLast } from './bare-reading.ts';
import { applyCorrection } from './correct-fact.ts';
import { anotherItem, anotherPart } from './correct-name.ts';
import { choiceOf, ownWith, type Way, waysOf } from './correct-reading.ts';
import { type Correctable, lastOf, newestWith, ownLast, saidFields, takes } from './correct-target.ts';
import {
  asks,
  becomes,
  type Becomes,
  type Decision,
  type Intent,
  refused,
  type Scene,
  showing,
} from './intent.ts';
import { openTestFor, withTest } from './route.ts';

type Correct = EntryOf<'correct'>;

export const correct: Intent<'correct'> = {
  slots: [
    'part', 'item', 'weight', 'price', 'cost', 'credit', 'priceEach', 'count', 'each', 'pieces', 'minutes', 'rate', 'costEach',
    'newItem', 'newPart', 'number', 'old', 'before', 'plain', 'priced',
  ], // prettier-ignore
  decide: (scene, entry) => {
    if (entry.newPart !== undefined) return anotherPart(scene, entry, entry.newPart);
    if (entry.newItem !== undefined) return anotherItem(scene, entry.newItem, entry.item);
    if (entry.part !== undefined) return ofPart(entry, entry.part);
    if (entry.item !== undefined) return ofPiece(scene, entry, entry.item);
    if (entry.number !== undefined) return bareNumber(scene, entry);
    return ofField(scene, entry);
  },
};

/** "make the trim 1.3": what the part is in all. */
function ofPart({ item, weight, credit, sure, test }: Correct, part: string): Decision | Becomes {
  const to = { part, item, sure, test };
  if (weight !== undefined) return becomes({ kind: 'weigh', ...to, weight, mode: 'set', told: true });
  return credit === undefined ? { is: 'ignored' } : becomes({ kind: 'credit', ...to, credit });
}

/** "make the ribeye 14.6 lb": what was received. */
function ofPiece(scene: Scene, entry: Correct, item: string): Decision {
  const test = entry.test === undefined ? openTestFor(scene, item) : scene.kitchen.tests.get(entry.test);
  const target = test?.status === 'open' ? newestWith(test, 'received') : undefined;
  return target === undefined
    ? refused(say('no-open-test', { item: name(item) }))
    : applyCorrection(scene, entry, target);
}

/** "no, 1.3": the only quantity of the speaker's last entry; of several it is asked which. */
function bareNumber(scene: Scene, entry: Correct): Decision {
  const reading = entry.plain === true ? readingSinceLast(scene, entry.number) : undefined;
  if (reading !== undefined) return reading;
  if (entry.priced === true) return asPrice(scene, entry);
  if (entry.before !== undefined) return insteadOf(scene, entry, entry.before);
  const target = ownLast(scene);
  const ways = target === undefined ? [] : waysOf(scene, target, entry);
  return target === undefined ? refused(say('nothing-to-correct')) : oneOf(scene, target, ways);
}

/** In the only way in which it can be meant; of several it is asked which. */
function oneOf(scene: Scene, target: Correctable, ways: readonly Way[]): Decision {
  const [only, other] = ways;
  if (only === undefined) return refused(say('nothing-to-correct'));
  if (other === undefined) return showing(applyCorrection(scene, only.entry, target), only.entry);
  const choices = Object.fromEntries(ways.map((way) => [way.choice, way.entry]));
  const fields = ways
    .map(({ choice }) => choice)
    .sort()
    .join('-');
  return asks(say('ask-correct-which', { fields }), { choices });
}

/** "7.60, not 7.40": of the speaker's last entries the one that says so much. */
function insteadOf(
  scene: Scene,
  { before: _, number = {}, ...entry }: Correct,
  before: BareNumber,
): Decision {
  const all = ownWith(scene, before);
  const [first] = all;
  const same = all.filter(({ target }) => target === first?.target);
  const isPlain = same.length === all.length || first?.target.saidIn === ownLast(scene)?.saidIn;
  if (first === undefined || !isPlain)
    return refused(say(first === undefined ? 'nothing-so-much' : 'several-so-much'));
  const ways = same.flatMap(({ field }): readonly Way[] => {
    const value = measuredAs(number, field);
    return value === undefined ? [] : [{ choice: choiceOf(field), entry: { ...entry, [field]: value } }];
  });
  return oneOf(scene, first.target, ways);
}

/** "it's at 7.40". */
function asPrice(scene: Scene, { plain: _, priced: __, number = {}, ...entry }: Correct): Decision {
  const price = measuredAs(number, 'price');
  if (price === undefined) return refused(say('nothing-to-correct'));
  const said = { ...entry, price } as Correct;
  const { degrees } = number;
  const isHot = degrees !== undefined && fitsStage('cook', degrees);
  if (!isHot || openLots(scene.kitchen.lots).length === 0) return showing(ofField(scene, said), said);
  return asks(say('ask-correct-which', { fields: 'degrees-newPrice' }), {
    choices: { degrees: { kind: 'temperature', degrees }, newPrice: said },
  });
}

/** "no, 11 portions", "no, 7.60 a pound": the field tells which entry is meant, the speaker's last one first. */
function ofField(scene: Scene, said: Correct): Decision {
  const last = ownLast(scene);
  const entry = last === undefined ? said : fitting(last, said);
  if (last !== undefined && takes(last.fact.type, entry))
    return showing(applyCorrection(scene, entry, last), entry);
  const before = saidFields(entry).includes('weight') ? undefined : lastOf(scene, entry);
  const doubt = last && priceOfWhat(scene, entry, { last, before });
  if (doubt !== undefined) return doubt;
  if (before !== undefined) return applyCorrection(scene, entry, before);
  if (openTestFor(scene, undefined) === undefined) return refused(say('nothing-to-correct'));
  return withTest(scene, entry, (test) => inTest(scene, entry, test));
}

/** "no, 15 ounces" is a portion's size only where the last entry was of portions. */
function fitting({ fact }: Correctable, entry: Correct): Correct {
  const { each, ...rest } = entry;
  const isOnly = each !== undefined && saidFields(entry).length === 1;
  return isOnly && ['weighed', 'received', 'tared'].includes(fact.type) ? { ...rest, weight: each } : entry;
}

/** "no, 16 cents" after what a bag costs is hardly the price of a pound. */
function priceOfWhat(
  scene: Scene,
  entry: Correct,
  at: { last: Correctable; before?: Correctable },
): Decision | undefined {
  const { last, before } = at;
  const { price, sure, ...rest } = entry;
  if (price === undefined || sure === true || saidFields(entry).length > 1 || last.fact.type !== 'packed')
    return undefined;
  const each: Correct = { ...rest, costEach: perUnit(price, scene.kitchen.settings.unit) };
  if (before === undefined) return showing(applyCorrection(scene, each, last), each);
  return asks(say('ask-correct-which', { fields: 'each-newPrice' }), {
    choices: { each, newPrice: { ...entry, sure: true } },
  });
}

/** What somebody else said of the speaker's test. */
function inTest(scene: Scene, entry: Correct, test: Test): Decision {
  const types = ['portioned', 'received', 'labored', 'packed'] as const;
  const type = saidFields(entry).includes('weight') ? undefined : types.find((each) => takes(each, entry));
  const target = type && newestWith(test, type);
  return target === undefined ? refused(say('nothing-to-correct')) : applyCorrection(scene, entry, target);
}

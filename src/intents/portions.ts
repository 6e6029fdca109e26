// "12 portions 16 oz", "portions weigh 11.2": how many, of what size, what they weigh together.
import { decimal, sum } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import type { Fact } from '../core/facts.ts';
import { OVERWEIGHT_TOLERANCE } from '../core/figures.ts';
import { commonSize } from '../core/portions.ts';
import { type Grams, toGrams } from '../core/quantity.ts';
import { list, say } from '../core/reply.ts';
import { saidBy } from '../core/speakers.ts';
import { countOf, PORTIONS, type Test } from '../core/test.ts';
import { askedOf, figuresOf, ofTest, portionsLine, toGo } from './card.ts';
import {
  answered,
  type Asked,
  asks,
  type Decision,
  type Intent,
  lacking,
  recorded,
  type Scene,
} from './intent.ts';
import { portionsDoubt } from './portions-doubt.ts';
import { besideList, morePortions } from './portions-list.ts';
import { respondPortions, thereWords } from './portions-reply.ts';
import { withTest } from './route.ts';

type Said = EntryOf<'portions'>;

/** A single portion of more than this is the weight of all of them, where there are several. */
const HEAVIEST_EACH: Grams = toGrams(decimal('3'), 'lb');

export const portions: Intent<'portions'> = {
  slots: ['count', 'each', 'weight', 'mode', 'told', 'item', 'old', 'number', 'single', 'backward', 'joined'],
  settle: (entry) => {
    const { each, ...rest } = entry;
    if (entry.single === true && entry.mode === 'add' && entry.count === undefined)
      return { ...entry, count: 1 };
    if (each === undefined || entry.weight !== undefined || entry.count === 1 || entry.single === true)
      return entry;
    return each.gt(HEAVIEST_EACH) ? { ...rest, weight: each } : entry;
  },
  decide: (scene, entry) =>
    entry.backward === true && !areLast(scene)
      ? { is: 'ignored' }
      : withTest(scene, entry, (test) => decidePortions(scene, test, entry)),
};

/** Whether the speaker's last words were of portions. */
const areLast = ({ kitchen, speaker }: Scene): boolean =>
  saidBy(kitchen.speakers, speaker).at(-1)?.facts.at(-1)?.fact.type === 'portioned';

function decidePortions(scene: Scene, test: Test, entry: Said): Decision {
  if (entry.anew === true) return record(test, [{ type: 'removed', part: PORTIONS }, fact(entry)]);
  if (entry.mode === 'add')
    return (
      withoutWeight(scene, test, entry) ?? morePortions(scene, test, entry) ?? record(test, [fact(entry)])
    );
  const differs = difference(test, entry);
  if (differs === 'none') {
    const figure = figuresOf(scene, test);
    return answered(
      ofTest(scene, test, say('already', { of: list([...portionsLine(figure), toGo(figure)]) })),
    );
  }
  const asked = portionsDoubt(scene, test, entry) ?? besideList(scene, test, entry);
  if (asked !== undefined) return asked;
  if (differs === 'other' && entry.told !== true && !replaces(scene, test, entry))
    return addOrReplace(scene, test, entry);
  return record(test, [fact(entry)]);
}

const fact = ({ mode, count, each, weight }: Said): Fact => ({
  type: 'portioned',
  mode: mode ?? 'set',
  count,
  eachGrams: each,
  grams: weight,
});

const record = (test: Test, facts: readonly Fact[]): Decision =>
  recorded(
    facts.map((each) => ({ test: test.id, item: test.item, fact: each })),
    (now) => respondPortions(now, test),
  );

/** More portions beside a weighed total, and nobody knows what one weighs: the total would be wrong. */
function withoutWeight(scene: Scene, test: Test, entry: Said): Decision | undefined {
  const { grams, batches } = test.portions;
  const known = entry.weight ?? entry.each ?? batches.at(-1)?.eachGrams;
  if (grams === undefined || entry.count === undefined || known !== undefined) return undefined;
  return asks(askedOf(scene, test, say('ask-what-they-weigh', { count: entry.count })), {
    wants: lacking(entry, 'weight'),
  });
}

/** Against what is there: says nothing new, fills in what was left out, or says something else. */
function difference({ portions: there }: Test, { count, each, weight }: Said): 'none' | 'fills' | 'other' {
  const size = commonSize(there.batches);
  const counted = countOf(there);
  const listed = sum(there.list);
  const complete = there.list.length > 0 && counted === undefined && there.grams === undefined;
  const same = [
    count === undefined ? undefined : counted === undefined ? null : counted === count,
    each === undefined ? undefined : size === undefined ? null : size.eq(each),
    weight === undefined
      ? undefined
      : complete
        ? isAbout(listed, weight)
        : there.grams === undefined
          ? null
          : there.grams.eq(weight),
  ];
  if (same.includes(false)) return 'other';
  return same.includes(null) ? 'fills' : 'none';
}

/** As near as two scales are. */
const isAbout = (one: Grams, other: Grams): boolean => one.minus(other).abs().lte(OVERWEIGHT_TOLERANCE);

/** Where the test is too heavy already, or would be with these on top, they are meant in place of those. */
function replaces(scene: Scene, test: Test, entry: Said): boolean {
  const { overweight, unaccountedGrams, portions: figure } = figuresOf(scene, test);
  if (overweight) return true;
  const each = entry.each ?? figure?.targetGrams;
  const added = entry.weight ?? (entry.count === undefined ? undefined : each?.times(entry.count));
  return added?.gt(unaccountedGrams.plus(OVERWEIGHT_TOLERANCE)) === true;
}

function addOrReplace(scene: Scene, test: Test, entry: Said): Decision {
  const replace: Said = { ...entry, told: true };
  const add: Said = { ...entry, mode: 'add', told: true };
  const before = list(thereWords(scene, test));
  const canAdd = entry.count !== undefined || entry.weight !== undefined;
  const choices: Asked['choices'] = canAdd ? { add, replace } : { replace, yes: replace };
  const asked = say(canAdd ? 'ask-portions-add-or-replace' : 'ask-portions-replace', { before });
  return asks(askedOf(scene, test, asked), { choices, again: { said: entry, accepts: replace } });
}

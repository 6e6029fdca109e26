// "12 portions 16 oz", "portions weigh 11.2": how many, of what size, what they weigh together.
import { decimal } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import { OVERWEIGHT_TOLERANCE } from '../core/figures.ts';
import { type Grams, toGrams } from '../core/quantity.ts';
import { list, say } from '../core/reply.ts';
import { countOf, type Test } from '../core/test.ts';
import { basisLines, figuresOf, ofTest, overweightAsk, portionsLine, toGo } from './card.ts';
import { answered, type Asked, asks, type Decision, type Intent, recorded, type Response, type Scene } from './intent.ts';
import { withTest } from './route.ts';

type Said = EntryOf<'portions'>;

/** A single portion of more than this is the weight of all of them, where there are several. */
const HEAVIEST_EACH: Grams = toGrams(decimal('3'), 'lb');

export const portions: Intent<'portions'> = {
  slots: ['count', 'each', 'weight', 'mode', 'told', 'item'],
  settle: (entry) => {
    const { each, ...rest } = entry;
    const together = each !== undefined && entry.weight === undefined && (entry.count ?? 1) > 1 && each.gt(HEAVIEST_EACH);
    return together ? { ...rest, weight: each } : entry;
  },
  decide: (scene, entry) => withTest(scene, entry, (test) => decidePortions(scene, test, entry)),
};

function decidePortions(scene: Scene, test: Test, entry: Said): Decision {
  if (entry.mode !== 'add') {
    const differs = difference(test, entry);
    if (differs === 'none') return answered(ofTest(scene, test, say('already', { of: list(portionsLine(figuresOf(scene, test))) })));
    if (differs === 'other' && entry.told !== true && !replaces(scene, test, entry)) return addOrReplace(scene, test, entry);
  }
  const fact = { type: 'portioned', mode: entry.mode ?? 'set', count: entry.count, eachGrams: entry.each, grams: entry.weight } as const;
  return recorded([{ test: test.id, item: test.item, fact }], (now) => respondPortions(now, test));
}

/** Against what is there: says nothing new, fills in what was left out, or says something else. */
function difference({ portions: there }: Test, entry: Said): 'none' | 'fills' | 'other' {
  const sizes = new Set(there.batches.map((batch) => batch.eachGrams?.toString()));
  const size = sizes.size === 1 ? there.batches[0]?.eachGrams : undefined;
  const pairs = [
    [there.batches.length === 0 ? undefined : countOf(there), entry.count],
    [size, entry.each],
    [there.grams, entry.weight],
  ] as const;
  let result: 'none' | 'fills' | 'other' = 'none';
  for (const [before, said] of pairs) {
    if (said === undefined || (before !== undefined && before.toString() === said.toString())) continue;
    if (before !== undefined) return 'other';
    result = 'fills';
  }
  return result;
}

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
  const before = list(portionsLine(figuresOf(scene, test)));
  const canAdd = entry.count !== undefined || entry.weight !== undefined;
  const choices: Asked['choices'] = canAdd ? { add, replace } : { replace, yes: replace };
  return asks(say(canAdd ? 'ask-portions-add-or-replace' : 'ask-portions-replace', { before }), { choices, again: { said: entry, accepts: replace } });
}

/** The portions as they now stand, and what is left. */
export function respondPortions(scene: Scene, { id }: Test): Response {
  const test = scene.kitchen.tests.get(id);
  if (test === undefined) return { say: [] };
  const figure = figuresOf(scene, test);
  const { count, list: listed } = { count: countOf(test.portions), list: test.portions.list };
  const said = portionsLine(figure);
  const bare = said.length === 0 ? [say(listed.length > 0 ? 'portions-uncounted' : 'portions-count', { count: count ?? 0 }), say('portions-need-weight')] : said;
  return { say: [ofTest(scene, test, ...bare, ...basisLines(figure), toGo(figure))], ask: overweightAsk(scene, test) };
}

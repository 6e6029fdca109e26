// What is asked before the weight of a part is recorded: more than the piece or than half of it, a point that was likely
// lost, a second amount for the same part.
import { decimal } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import { OVERWEIGHT_TOLERANCE } from '../core/figures.ts';
import { partPoolOf } from '../core/pools.ts';
import type { Grams } from '../core/quantity.ts';
import { name, percent, say, weight } from '../core/reply.ts';
import { slipOf } from '../core/slip.ts';
import type { Part, Test } from '../core/test.ts';
import { askedOf, figuresOf } from './card.ts';
import { asks, confirm, type Decision, lacking, type Scene } from './intent.ts';

type Weigh = EntryOf<'weigh'>;

/** A weight that is about to be recorded, without its container, against what the part weighs already. */
interface Against {
  readonly entry: Weigh;
  readonly before: Part | undefined;
  readonly net: Grams;
}

const HALF = decimal('0.5');

/** More than the whole piece is never right; more than half of it is asked once. */
function implausible(scene: Scene, test: Test, { entry, before, net }: Against): Decision | undefined {
  const { grams } = test.received;
  const adds = entry.mode === 'add' && before !== undefined;
  const after = adds ? before.grams.plus(net) : net;
  const args = {
    part: name(entry.part),
    added: weight(net),
    weight: weight(after),
    received: weight(grams),
    share: percent(after.div(grams).times(100)),
    // A tenth of over half is what a part may well come to: a lost point is the likeliest reason.
    meant: weight(after.div(10)),
  };
  const wants = lacking(entry, 'weight');
  if (after.gt(grams.plus(OVERWEIGHT_TOLERANCE)))
    return asks(askedOf(scene, test, say(adds ? 'ask-heavier-with-added' : 'ask-heavier-than-piece', args)), {
      wants,
    });
  if (after.gt(grams.times(HALF)) && entry.sure !== true)
    return (
      slip(scene, test, { entry, before, net }) ??
      confirm(
        askedOf(scene, test, say(adds ? 'ask-over-half-with-added' : 'ask-over-half', args)),
        entry,
        wants,
      )
    );
  return undefined;
}

/**
 * A weight far outside what the part usually comes to, where a moved decimal point explains it. Only the first weighing of a
 * part is asked about: a second one has its own question, and none is asked two.
 */
function slip(scene: Scene, test: Test, { entry, before, net }: Against): Decision | undefined {
  if (
    before !== undefined ||
    entry.sure === true ||
    entry.told === true ||
    entry.mode === 'add' ||
    entry.container !== undefined
  )
    return undefined;
  const { part } = entry;
  const history = partPoolOf(scene.kitchen, test.item, part);
  const { grams: receivedGrams } = test.received;
  const found = slipOf({ grams: net, receivedGrams, history, band: scene.bands?.get(part) });
  if (found === undefined) return undefined;
  const args = {
    part: name(part),
    weight: weight(net),
    share: percent(net.div(receivedGrams).times(100)),
    meant: weight(found.grams),
  };
  const { usual } = found;
  const asked =
    'meanPct' in usual
      ? say('ask-slip', { ...args, usual: percent(usual.meanPct) })
      : say('ask-slip-band', { ...args, low: percent(usual.lowPct), high: percent(usual.highPct) });
  return confirm(askedOf(scene, test, asked), entry, lacking(entry, 'weight'));
}

/** A second, different amount for a part: on top, or in its place? */
function addOrReplace(scene: Scene, test: Test, { entry, before, net }: Against): Decision | undefined {
  if (entry.mode === 'add' || entry.told === true || before === undefined || before.grams.eq(net))
    return undefined;
  const { unaccountedGrams, overweight } = figuresOf(scene, test);
  if (overweight || net.gt(unaccountedGrams.plus(OVERWEIGHT_TOLERANCE))) return undefined;
  const replace: Weigh = { ...entry, told: true };
  const add: Weigh = { ...entry, mode: 'add', told: true };
  const args = {
    part: name(entry.part),
    before: weight(before.grams),
    weight: weight(net),
    sum: weight(before.grams.plus(net)),
  };
  const asked = askedOf(scene, test, say('ask-add-or-replace', args));
  return asks(asked, { choices: { add, replace }, again: { said: entry, accepts: replace } });
}

/** The one question that the weight raises, if any. */
export const weighDoubt = (scene: Scene, test: Test, said: Against): Decision | undefined =>
  implausible(scene, test, said) ?? addOrReplace(scene, test, said) ?? slip(scene, test, said);

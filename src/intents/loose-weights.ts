// "16.2 15.9 16.4": weights without a word for what they are. Where they are like the portions on the table, they are those;
// where a piece is on the table, it is asked; without one they are talk.
import { decimal } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import { openTests } from '../core/kitchen.ts';
import { commonSize, portionFigures } from '../core/portions.ts';
import type { Grams } from '../core/quantity.ts';
import { list, say, size } from '../core/reply.ts';
import type { Test } from '../core/test.ts';
import { askedOf } from './card.ts';
import { type Asked, asks, type Decision, type Scene } from './intent.ts';
import { openTestFor, withTest } from './route.ts';

type Listed = EntryOf<'portionWeights'>;

/** How far from its size a portion may be and still be known as one. */
const MOST_OFF = decimal('0.2');

export function decideLoose(
  scene: Scene,
  entry: Listed,
  decide: (test: Test, told: Listed) => Decision,
): Decision {
  if (!isForTable(scene, entry)) return { is: 'ignored' };
  return withTest(scene, entry, (test) => {
    if (areLike(sizeIn(test), entry.eachList)) return decide(test, plainly(entry));
    const { asked, ...how } = looseAsk(entry);
    return asks(askedOf(scene, test, asked), how);
  });
}

const plainly = ({ loose: _, ...told }: Listed): Listed => told;

/** Whether they are portions at all. */
export function looseAsk(entry: Listed): Asked {
  const weights = list(entry.eachList.map((each) => say('size', { size: size(each) })));
  const told = plainly(entry);
  return {
    asked: say('ask-loose-weights', { weights }),
    choices: { yes: told },
    again: { said: entry, accepts: told },
  };
}

/** Of the speaker's piece; of others only where there are portions. */
function isForTable(scene: Scene, { test, item }: Listed): boolean {
  if (test !== undefined || openTestFor(scene, item) !== undefined) return true;
  return openTests(scene.kitchen).some((each) => sizeIn(each) !== undefined);
}

/** What the portions were cut to, else what they weigh. */
const sizeIn = ({ portions, received }: Test): Grams | undefined =>
  commonSize(portions.batches) ?? portionFigures(portions, received.grams)?.meanGrams;

const areLike = (wanted: Grams | undefined, weights: readonly Grams[]): boolean =>
  wanted !== undefined && weights.every((each) => each.minus(wanted).abs().lte(wanted.times(MOST_OFF)));

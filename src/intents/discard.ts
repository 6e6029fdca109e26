// "threw out the trim": what was cut off and is gone before anybody ground it. No lot takes it, and nobody is told to chill it.
import { type Decimal, sum } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import { OVERWEIGHT_TOLERANCE } from '../core/figures.ts';
import { list, name, type Reply, say, weight } from '../core/reply.ts';
import { isWatched } from '../core/watched.ts';
import {
  asks,
  type Decision,
  type Intent,
  lacking,
  type NewFact,
  recorded,
  refused,
  type Scene,
} from './intent.ts';
import { type Left, toGrind } from './to-grind.ts';

type Discard = EntryOf<'discard'>;

export const discard: Intent<'discard'> = {
  slots: ['part', 'weight', 'item'],
  decide: (scene, entry) => {
    const { part, weight: said } = entry;
    const there = toGrind(scene, part, entry.item);
    if (there.length === 0) return ofNoTest(scene, entry);
    const total = sum(there.map(({ grams }) => grams));
    if (said?.gt(total.plus(OVERWEIGHT_TOLERANCE)) === true)
      return asks(say('ask-bin-more', { part: name(part), weight: weight(said), left: weight(total) }), {
        wants: lacking(entry, 'weight'),
      });
    return gone(entry, there, total);
  },
};

/** Weighed by nobody: what an alarm is about, or nothing of ours. */
function ofNoTest({ kitchen }: Scene, { part, weight: said }: Discard): Decision {
  if (said === undefined && isWatched(kitchen.memory, part)) return watchedGone(part);
  return part === 'trim' ? refused(say('nothing-to-bin', { part: name(part) })) : { is: 'ignored' };
}

/** Of several tests in one tub each gave its share. */
function gone({ part, weight: said, item }: Discard, there: readonly Left[], total: Decimal): Decision {
  const all = said === undefined || said.gte(total);
  const isWhole = all && item === undefined;
  const shares = there.map(({ test, grams }) => ({
    test,
    grams: all ? grams : said.times(grams).div(total),
  }));
  const facts = shares.map(({ test, grams }): NewFact => ({
    test: test.id,
    item: test.item,
    fact: { type: 'binned', part, grams, ...(isWhole ? { all: true } : {}) },
  }));
  const of = shares.map(({ test, grams }) =>
    say('part-weight', { part: name(test.item), weight: weight(grams) }),
  );
  const left = all ? [] : [say('binned-left', { weight: weight(total.minus(said)) })];
  return recorded(facts, () => ({
    say: [
      say('binned', {
        part: name(part),
        weight: weight(sum(shares.map(({ grams }) => grams))),
        of: list(of),
      }),
      ...left,
      say('binned-figures'),
    ],
  }));
}

/** What an alarm was about is gone, and the alarm with it. */
export const watchedGone = (part: string): Decision =>
  recorded([{ fact: { type: 'binned', part, all: true } }], () => ({ say: [binnedWords({ part })] }));

/** Without a weight where none was known. */
export const binnedWords = ({ part, grams }: { part: string; grams?: Decimal | undefined }): Reply =>
  grams === undefined
    ? say('binned-plain', { part: name(part) })
    : say('binning', { part: name(part), weight: weight(grams) });

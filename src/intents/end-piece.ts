// "end piece 18.5": how many portions the end gives, and where the rest goes: proposed, and booked when told to.
import { endPiece as endPieceOf, type EndPiece } from '../core/end-piece.ts';
import type { EntryOf } from '../core/entry.ts';
import type { Fact } from '../core/facts.ts';
import { sizeOf } from '../core/kitchen.ts';
import type { Grams } from '../core/quantity.ts';
import { type Reply, say, size } from '../core/reply.ts';
import { countOf, type Test } from '../core/test.ts';
import { askedOf } from './card.ts';
import { asks, type Decision, type Intent, recorded, refused, type Scene } from './intent.ts';
import { respondPortions } from './portions-reply.ts';
import { withTest } from './route.ts';

type Said = EntryOf<'endPiece'>;

export const endPiece: Intent<'endPiece'> = {
  slots: ['each', 'rest', 'item'],
  decide: (scene, entry) =>
    withTest(scene, entry, (test) => {
      const target = test.portions.batches.at(-1)?.eachGrams ?? sizeOf(scene.kitchen, test.item);
      if (target === undefined) return refused(say('end-piece-no-size'));
      const end = endPieceOf(entry.each, target);
      if (entry.rest === undefined && end.overGrams.gt(0))
        return proposed(scene, test, { entry, end, target });
      const ended: Fact = { type: 'ended', grams: entry.each, rest: entry.rest };
      const facts = [
        ...portionFacts(test, end, { target, rest: entry.rest }),
        ...trimFacts(end, entry),
        ended,
      ];
      return recorded(
        facts.map((fact) => ({ test: test.id, item: test.item, fact })),
        (now) => {
          const there = respondPortions(now, test);
          return { ...there, say: [booked(end, target, entry), ...there.say] };
        },
      );
    }),
};

interface Proposal {
  readonly entry: Said;
  readonly end: EndPiece;
  readonly target: Grams;
}

function proposed(scene: Scene, test: Test, { entry, end, target }: Proposal): Decision {
  const trim: Said = { ...entry, rest: 'trim' };
  const portion: Said = { ...entry, rest: 'portion' };
  const args = { each: size(entry.each), count: end.count, size: size(target), over: size(end.overGrams) };
  const asked = askedOf(scene, test, say(end.count === 0 ? 'ask-end-piece-small' : 'ask-end-piece', args));
  return asks(asked, { choices: { trim, portion }, again: { said: entry, accepts: trim } });
}

/** The portions of the size last, so that it stays the size that is cut; on a full list they are listed too. */
function portionFacts(
  { portions }: Test,
  { count, overGrams }: EndPiece,
  { target, rest }: { target: Grams; rest: Said['rest'] },
): readonly Fact[] {
  const small = rest === 'portion' && overGrams.gt(0) ? [overGrams] : [];
  const whole = Array.from({ length: count }, () => target);
  const counted = countOf(portions);
  const isListed = portions.list.length > 0 && (counted === undefined || portions.list.length >= counted);
  const list: readonly Fact[] =
    isListed && small.length + count > 0 ? [{ type: 'listed', eachGrams: [...small, ...whole] }] : [];
  if (isListed && counted === undefined && small.length === 0) return list;
  const first: readonly Fact[] =
    isListed && counted === undefined
      ? [{ type: 'portioned', mode: 'set', count: portions.list.length }]
      : [];
  const more = small.map((eachGrams): Fact => ({ type: 'portioned', mode: 'add', count: 1, eachGrams }));
  const sized: readonly Fact[] =
    count === 0 ? [] : [{ type: 'portioned', mode: 'add', count, eachGrams: target }];
  return [...first, ...more, ...sized, ...list];
}

const trimFacts = ({ overGrams }: EndPiece, { rest }: Said): readonly Fact[] =>
  rest === 'trim' && overGrams.gt(0) ? [{ type: 'weighed', part: TRIM, grams: overGrams, mode: 'add' }] : [];

const TRIM = 'trim';

/** What was made of it; the rest is reckoned, not weighed. */
function booked({ count, overGrams }: EndPiece, target: Grams, { each, rest }: Said): Reply {
  const args = { each: size(each), count, size: size(target), over: size(overGrams) };
  if (overGrams.isZero()) return say('end-piece-even', args);
  return say(rest === 'portion' ? 'end-piece-portion' : 'end-piece-trim', args);
}

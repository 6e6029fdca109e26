// "steaks 16.2 15.9 16.4": single portions from the scale. Lists append.
import { sum } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import type { Fact } from '../core/facts.ts';
import type { Grams } from '../core/quantity.ts';
import { list, say, size } from '../core/reply.ts';
import { countOf, standingFacts, type Test } from '../core/test.ts';
import { askedOf, basisLines, figuresOf, ofTest, overweightAsk, portionsLine, leftOf, toGo } from './card.ts';
import { answered, asks, type Decision, type Intent, recorded, type Response, type Scene } from './intent.ts';
import { decideLoose } from './loose-weights.ts';
import { offWords } from './on-weight.ts';
import { withTest } from './route.ts';

type Said = EntryOf<'portionWeights'>;

export const portionWeights: Intent<'portionWeights'> = {
  slots: ['eachList', 'item', 'loose', 'count', 'each'],
  decide: (scene, entry) =>
    entry.loose === true
      ? decideLoose(scene, entry, (test, told) => decideList(scene, test, told))
      : withTest(scene, entry, (test) => decideList(scene, test, entry)),
};

function decideList(scene: Scene, test: Test, entry: Said): Decision {
  if (entry.sure !== true && repeatsLast(test, entry.eachList))
    return answered(
      ofTest(
        scene,
        test,
        say('already', { of: list([...portionsLine(figuresOf(scene, test)), toGo(figuresOf(scene, test))]) }),
      ),
    );
  const count = countOf(test.portions);
  const listed = test.portions.list.length + entry.eachList.length;
  if (
    count !== undefined &&
    listed > count &&
    (entry.sure !== true || (entry.counted ?? listed) !== listed)
  ) {
    const { counted: _, ...said } = entry;
    const sure: Said = { ...said, sure: true };
    const how = {
      choices: { yes: sure },
      again: { said, accepts: sure },
      wants: { held: sure, slot: 'counted' },
    };
    return asks(askedOf(scene, test, say('ask-more-weights', { listed, count })), how);
  }
  const facts: Fact[] = [{ type: 'listed', eachGrams: [...entry.eachList] }];
  if (count !== undefined && listed > count) facts.unshift({ type: 'portioned', mode: 'set', count: listed });
  return recorded(
    facts.map((fact) => ({ test: test.id, item: test.item, fact })),
    (now) => respond(now, test, entry),
  );
}

/** From so many weights on, the same ones in the same order are no chance. */
const NO_CHANCE = 3;

/** The same weights once more: right after they were said, or so many that they are no others. */
function repeatsLast(test: Test, said: readonly Grams[]): boolean {
  const facts = standingFacts(test.facts).map(({ fact }) => fact);
  const last = said.length < NO_CHANCE ? facts.at(-1) : facts.findLast(({ type }) => type === 'listed');
  if (last?.type !== 'listed' || last.eachGrams.length !== said.length) return false;
  return last.eachGrams.every((each, at) => said[at]?.eq(each) === true);
}

function respond(scene: Scene, { id }: Test, { eachList }: Said): Response {
  const test = scene.kitchen.tests.get(id);
  if (test === undefined) return { say: [] };
  const figure = figuresOf(scene, test);
  const mean = sum(test.portions.list).div(test.portions.list.length);
  const heard = say('weights-heard', {
    weights: list(eachList.map((each) => say('size', { size: size(each) }))),
    listed: test.portions.list.length,
    mean: size(mean),
  });
  return {
    say: [
      heard,
      ofTest(
        scene,
        test,
        ...portionsLine(figure),
        ...basisLines(figure),
        ...offWords(scene, test),
        ...leftOf(figure),
      ),
    ],
    ask: overweightAsk(scene, test),
  };
}

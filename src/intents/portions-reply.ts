// The portions of a test as they stand, in words.
import { type Reply, say } from '../core/reply.ts';
import { countOf, type Test } from '../core/test.ts';
import { basisLines, figuresOf, ofTest, overweightAsk, portionsLine, leftOf } from './card.ts';
import type { Response, Scene } from './intent.ts';

/** What there is of portions, also where their weight is not known yet. */
export function thereWords(scene: Scene, test: Test): readonly Reply[] {
  const said = portionsLine(figuresOf(scene, test));
  if (said.length > 0) return said;
  const count = countOf(test.portions);
  return count === undefined
    ? [say('portions-uncounted-size')]
    : [say('portions-count', { count }), say('portions-need-weight')];
}

/** The portions as they now stand, and what is left. */
export function respondPortions(scene: Scene, { id }: Test): Response {
  const test = scene.kitchen.tests.get(id);
  if (test === undefined) return { say: [] };
  const figure = figuresOf(scene, test);
  const said = [...thereWords(scene, test), ...basisLines(figure), ...leftOf(figure)];
  return { say: [ofTest(scene, test, ...said)], ask: overweightAsk(scene, test) };
}

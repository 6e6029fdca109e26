// "the tub weighs half a pound": comes off what is weighed in it from now on.
import { tareOf } from '../core/kitchen.ts';
import { list, name, say, weight } from '../core/reply.ts';
import { answered, type Intent, recorded } from './intent.ts';

export const tare: Intent<'tare'> = {
  slots: ['container', 'weight'],
  decide: (scene, { container, weight: grams }) => {
    const read = say('tare-set', { container: name(container), weight: weight(grams) });
    if (tareOf(scene.kitchen, container)?.eq(grams) === true)
      return answered(say('already', { of: list([read]) }));
    return recorded([{ fact: { type: 'tared', container, grams } }], () => ({ say: [read] }));
  },
};

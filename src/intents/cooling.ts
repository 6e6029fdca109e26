// "start cooling the chili": the clock of cooked food, by word only. Raw trim is never cooled by it.
import { name, say } from '../core/reply.ts';
import { coolings } from '../core/watched.ts';
import { coolingSource } from './advice.ts';
import { answered, type Intent, recorded } from './intent.ts';

export const cooling: Intent<'cooling'> = {
  slots: ['what'],
  decide: ({ kitchen }, { what }) => {
    const words = say('cooling-begun', { what: name(what) });
    if (coolings(kitchen.memory).some((each) => each.what === what))
      return answered(say('cooling-already', { what: name(what) }));
    return recorded([{ fact: { type: 'coolingBegun', what } }], () => ({
      say: [words, coolingSource(), say('check-code')],
    }));
  },
};

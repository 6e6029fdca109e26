// "what temp for ground trim": the kitchen's own limit first, the published ones beside it.
import { list, name, say } from '../core/reply.ts';
import { cookSource, houseLimit } from './advice.ts';
import { answered, type Intent } from './intent.ts';

export const askTemperature: Intent<'askTemperature'> = {
  slots: ['part', 'food'],
  decide: ({ kitchen }, { part, food }) => {
    const isHouse = food !== 'poultry' && food !== 'whole' && food !== 'cooked';
    const limits = [...(isHouse ? [houseLimit(kitchen.settings)] : []), cookSource(food)];
    const of = part === undefined ? say('ground-meat') : say('line', { of: name(part) });
    return answered(say('of-item', { item: list([of]), of: list(limits, 'space') }), say('check-code'));
  },
};

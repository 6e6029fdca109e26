// "how long does the grind keep": what is published of raw ground meat, and since when each open lot lies there.
import { openLots } from '../core/lots.ts';
import { moment, name, say } from '../core/reply.ts';
import { answered, type Intent } from './intent.ts';

export const askStorage: Intent<'askStorage'> = {
  slots: [],
  decide: ({ kitchen }) =>
    answered(
      ...openLots(kitchen.lots).map(({ id, part, openedAt }) =>
        say('grind-since', { lot: id, part: name(part), at: moment(openedAt) }),
      ),
      say('grind-keeps'),
      say('check-code'),
    ),
};

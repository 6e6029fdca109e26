// "got it": a person has heard the alarms that ring, and is told when they come back. Said when none rings, it is not for us.
import { ringing } from '../core/alarm.ts';
import { dues } from '../core/schedule.ts';
import { lengthOfTime } from '../core/length-of-time.ts';
import { MINUTE_MS } from '../core/safety-due.ts';
import { say } from '../core/reply.ts';
import { type Intent, recorded } from './intent.ts';

export const acknowledge: Intent<'acknowledge'> = {
  slots: [],
  decide: ({ kitchen, at, duesOf = dues }) => {
    const now = Date.parse(at);
    const heard = ringing(kitchen, duesOf(kitchen, now), now);
    if (heard.length === 0) return { is: 'ignored' };
    const keys = heard.map(({ key }) => key);
    const again = heard.flatMap(({ againMinutes }) => againMinutes ?? []);
    return recorded([{ fact: { type: 'acknowledged', keys } }], () => ({
      say: [
        say('acknowledged', { count: keys.length }),
        ...(again.length === 0
          ? []
          : [say('acknowledged-for', { length: lengthOfTime(Math.min(...again) * MINUTE_MS) })]),
      ],
    }));
  },
};

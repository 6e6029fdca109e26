// "from monday", "from the 15th": when a price or a rate that was said with a day comes into force.
import { dayMeant } from '../core/day-ahead.ts';
import { date, say } from '../core/reply.ts';
import { asks, type Decision, type Scene } from './intent.ts';

/** Decides with the beginning of the day where the kitchen is; without one where no day was said, or it is past: it holds at once. */
export function fromDay(
  scene: Scene,
  day: string | undefined,
  decide: (from: string | undefined) => Decision,
): Decision {
  const { at, kitchen } = scene;
  const meant = day === undefined ? undefined : dayMeant(day, at, kitchen.settings.timezone);
  if (day !== undefined && meant === undefined) return asks(say('ask-which-day'));
  if (meant?.is === 'unclear') return asks(say('ask-day-behind', { date: date(meant.next) }));
  return decide(meant !== undefined && meant.start > at ? meant.start : undefined);
}

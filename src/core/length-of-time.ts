// How long ago, as a person says it: "40 min", "3 h", "4 h 30 min".
import { list, say, type ReplyValue } from './reply.ts';

const MINUTE_MS = 60_000;
/** Beyond that nobody asks for the minutes. */
const MOST_MINUTES = 12 * 60;

/** Whole minutes, rounded; of more than half a day whole hours. */
export function lengthOfTime(ms: number): ReplyValue {
  const exact = Math.max(0, Math.round(ms / MINUTE_MS));
  const all = exact > MOST_MINUTES ? Math.round(exact / 60) * 60 : exact;
  const [hours, minutes] = [Math.floor(all / 60), all % 60];
  const is = hours === 0 ? 'minutes' : minutes === 0 ? 'hours' : 'both';
  return list([say('length-of-time', { is, hours, minutes })]);
}

// What the alarms of food safety have in common.
import { AHEAD_MS } from './alarm.ts';
import type { Due } from './due.ts';
import { COLD_F, cookLimit, GROUND_CODE_F, GROUND_FSIS_F, GROUND_HOUSE_F } from './heat.ts';
import type { Kitchen } from './kitchen.ts';
import { type Reply, say, temperature } from './reply.ts';

export const MINUTE_MS = 60 * 1000;
export const HOUR_MS = 60 * MINUTE_MS;

export type Moment = Pick<Due, 'at' | 'isAhead'>;

/** To the team, and with the word that the local code goes before. */
export const safetyDue = (
  key: string,
  { at, isAhead }: Moment,
  said: readonly Reply[],
  how: Pick<Due, 'againMinutes' | 'unheardMinutes' | 'until' | 'reading'> & { readonly alarm?: false } = {},
): Due => ({
  ...{ key, at, to: 'team', alarm: true, ...how },
  ...(isAhead === undefined ? {} : { isAhead }),
  say: [...said, say('check-code')],
});

/** A time so long after a fact. Of a fact that lies ahead the clock was wrong: nobody knows how long ago it was. */
export function after(fact: string, ms: number, now: number): Moment {
  const at = Date.parse(fact);
  return at > now + AHEAD_MS ? { at: now + ms, isAhead: true } : { at: at + ms };
}

/** What ground meat is cooked to here. */
export const limitIn = ({ settings }: Kitchen): Reply['args'] => ({
  limit: temperature(cookLimit('ground', settings.groundCookF) ?? GROUND_HOUSE_F),
});

/** What is published of cooking ground meat, and of cold holding. */
export const GROUND_SOURCE = say('source-ground', {
  code: temperature(GROUND_CODE_F),
  fsis: temperature(GROUND_FSIS_F),
});
export const COLD_SOURCE = say('source-cold', { cold: temperature(COLD_F) });

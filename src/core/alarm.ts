// Alarms that have rung and that nobody has acknowledged yet. They are kept as one list, the newest in one ledger. An alarm rings
// on while whoever made it still says that it is due: when its reason is gone (the reading has passed), it falls silent.
import type { Due } from './due.ts';
import type { FactOf, Recorded } from './facts.ts';
import type { Kitchen } from './kitchen.ts';
import { newest } from './ledger.ts';
import { number, say } from './reply.ts';
import { decimal } from './decimal.ts';

export interface Standing {
  readonly key: string;
  /** When it rang first, by the clock then. */
  readonly since: string;
  readonly rungAt: string;
  readonly rings: number;
}

export const STANDING_KEY = 'alarms';
/** More than anybody can hear out; a kitchen with so many has another problem. */
const MOST_STANDING = 50;

export function standingIn(memory: Kitchen['memory']): readonly Standing[] {
  const found = newest(memory.get(STANDING_KEY) ?? []);
  return found !== undefined && 'text' in found.value
    ? (JSON.parse(found.value.text) as readonly Standing[])
    : [];
}

const AGAIN = /#(\d+)$/;

/** The list after an alarm has rung, for the first time or again. */
export function rung(standing: readonly Standing[], { fact, at }: Recorded): readonly Standing[] {
  const key = (fact as FactOf<'fired'>).key.replace(AGAIN, '');
  const known = standing.find((each) => each.key === key);
  const next = { key, since: known?.since ?? at, rungAt: at, rings: (known?.rings ?? 0) + 1 };
  return [...standing.filter((each) => each.key !== key), next].slice(-MOST_STANDING);
}

export const heardOf = (standing: readonly Standing[], keys: readonly string[]): readonly Standing[] =>
  standing.filter(({ key }) => !keys.includes(key));

/** Minutes after which an unheard alarm rings again and goes to the second person, where the kitchen has set none. */
const USUAL_MINUTES = 10;
/** It rings less often the longer it stands, and never less than this often. */
const MOST_WAITS = 6;
const MINUTE_MS = 60_000;

/** Alarms whose reason still holds, with the time of their next ring. Elapsed time: no zone in it. */
export function ringsOf(kitchen: Kitchen, dues: readonly Due[]): readonly Due[] {
  const { escalateMinutes = USUAL_MINUTES, secondPerson } = kitchen.settings;
  const second: Due['to'] = secondPerson === undefined ? 'team' : { speaker: secondPerson };
  return standingIn(kitchen.memory).flatMap(({ key, rungAt, since, rings }) => {
    const due = dues.find((each) => each.key === key);
    if (due === undefined) return [];
    const at = Date.parse(rungAt) + escalateMinutes * Math.min(rings, MOST_WAITS) * MINUTE_MS;
    const minutes = decimal(String(Math.max(0, Math.round((at - Date.parse(since)) / MINUTE_MS))));
    const unheard = say('alarm-unheard', { minutes: number(minutes, 0) });
    return [{ ...due, key: `${key}#${rings + 1}`, at, to: second, say: [...due.say, unheard] }];
  });
}

/** The alarms that stand and whose reason holds. */
export const ringing = (kitchen: Kitchen, dues: readonly Due[]): readonly Due[] => {
  const keys = new Set(standingIn(kitchen.memory).map(({ key }) => key));
  return dues.filter(({ key }) => keys.has(key));
};

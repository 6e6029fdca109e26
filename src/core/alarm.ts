// Alarms that have rung. They are kept as one list, the newest in one ledger. An alarm rings on until a person acknowledges it, and
// some come back after that, while whoever made them still says that they are due: when its reason is gone (the reading has
// passed), an alarm falls silent.
import type { Due } from './due.ts';
import type { FactOf, Recorded } from './facts.ts';
import type { Kitchen } from './kitchen.ts';
import { newest } from './ledger.ts';
import { lengthOfTime } from './length-of-time.ts';
import { DAY_MS } from './local-time.ts';
import { say } from './reply.ts';

export interface Standing {
  readonly key: string;
  /** When it rang first, or first after it was heard, by the clock then. */
  readonly since: string;
  readonly rungAt: string;
  readonly rings: number;
  /** Of those, since anybody heard it. */
  readonly unheard?: number;
  /** When and by which entry it was acknowledged. */
  readonly heard?: { readonly at: string; readonly entry: string };
}

export const STANDING_KEY = 'alarms';
/** More than anybody can hear out; a kitchen with so many has another problem. */
const MOST_STANDING = 50;
/** What was heard longer ago comes back by no rule, and can't be taken back any more. */
const HEARD_KEPT_MS = 2 * DAY_MS;

export function standingIn(memory: Kitchen['memory']): readonly Standing[] {
  const found = newest(memory.get(STANDING_KEY) ?? []);
  return found !== undefined && 'text' in found.value
    ? (JSON.parse(found.value.text) as readonly Standing[])
    : [];
}

/** Those that nobody has acknowledged. */
export const unheardIn = (memory: Kitchen['memory']): readonly Standing[] =>
  standingIn(memory).filter(({ heard }) => heard === undefined);

const AGAIN = /#(\d+)$/;

/** The list after an alarm has rung, for the first time or again. */
export function rung(standing: readonly Standing[], { fact, at }: Recorded): readonly Standing[] {
  const key = (fact as FactOf<'fired'>).key.replace(AGAIN, '');
  const known = standing.find((each) => each.key === key);
  const since = known === undefined || known.heard !== undefined ? at : known.since;
  const unheard = known === undefined || known.heard !== undefined ? 0 : (known.unheard ?? known.rings);
  const next = { key, since, rungAt: at, rings: (known?.rings ?? 0) + 1, unheard: unheard + 1 };
  const kept = standing.filter(
    ({ key: other, heard }) =>
      other !== key && (heard === undefined || Date.parse(at) - Date.parse(heard.at) < HEARD_KEPT_MS),
  );
  return [...kept, next].slice(-MOST_STANDING);
}

export const heardOf = (
  standing: readonly Standing[],
  keys: readonly string[],
  { at, entry }: Pick<Recorded, 'at' | 'entry'>,
): readonly Standing[] =>
  standing.map((each) => (keys.includes(each.key) ? { ...each, heard: { at, entry } } : each));

/** The list after an acknowledgement was taken back; undefined where the entry was none. They wait as if they had just rung. */
export function unheardAgain(
  standing: readonly Standing[],
  { target, at }: { target: string; at: string },
): readonly Standing[] | undefined {
  if (!standing.some(({ heard }) => heard?.entry === target)) return undefined;
  return standing.map(({ heard, ...each }) =>
    heard === undefined ? each : heard.entry === target ? { ...each, rungAt: at } : { ...each, heard },
  );
}

/** Minutes after which an unheard alarm rings again and goes to the second person, where the kitchen has set none. */
export const USUAL_MINUTES = 10;
/** It rings less often the longer it stands, and never less than this often, unless the alarm has its own time. */
const MOST_WAITS = 6;
/** So many rings are near one another, whatever time the alarm has. */
const NEAR_RINGS = 2;
const MINUTE_MS = 60_000;
/** What was noted so much later than now was noted by a clock that was ahead. */
export const AHEAD_MS = 5 * MINUTE_MS;

/** Alarms whose reason still holds, with the time of their next ring. Elapsed time: no zone in it. */
export const ringsOf = (kitchen: Kitchen, dues: readonly Due[], now: number): readonly Due[] =>
  standingIn(kitchen.memory)
    .flatMap((each) => {
      const due = dues.find(({ key }) => key === each.key);
      if (due === undefined) return [];
      return each.heard === undefined
        ? [unheardRing(kitchen, due, each)]
        : heardRing(due, each, each.heard.at);
    })
    .filter(({ at, until = Infinity }) => at < until)
    .map(({ base, isAhead: _, ...due }) =>
      base > now + AHEAD_MS ? { ...due, at: now + due.at - base, isAhead: true } : due,
    );

interface Ring extends Due {
  /** Since when it waits. */
  readonly base: number;
}

function unheardRing(
  { settings }: Kitchen,
  due: Due,
  { rungAt, since, rings, unheard = rings }: Standing,
): Ring {
  const { escalateMinutes = USUAL_MINUTES, secondPerson } = settings;
  const base = Date.parse(rungAt);
  const longer = escalateMinutes * Math.min(unheard, MOST_WAITS);
  const own = due.unheardMinutes ?? longer;
  const at = base + (unheard > NEAR_RINGS ? own : Math.min(longer, own)) * MINUTE_MS;
  return {
    ...due,
    key: `${due.key}#${rings + 1}`,
    base,
    at,
    to: secondPerson === undefined ? 'team' : { speaker: secondPerson, withTeam: true },
    say: [...due.say, say('alarm-unheard', { length: lengthOfTime(at - Date.parse(since)) })],
  };
}

function heardRing(due: Due, { rings }: Standing, heardAt: string): readonly Ring[] {
  if (due.againMinutes === undefined) return [];
  const base = Date.parse(heardAt);
  const at = base + due.againMinutes * MINUTE_MS;
  const again = say('alarm-again', { length: lengthOfTime(at - base) });
  return [{ ...due, key: `${due.key}#${rings + 1}`, base, at, say: [...due.say, again] }];
}

/** The alarms that stand unheard, whose reason holds, and which are not over. */
export const ringing = (kitchen: Kitchen, dues: readonly Due[], now: number): readonly Due[] => {
  const keys = new Set(unheardIn(kitchen.memory).map(({ key }) => key));
  return dues.filter(({ key, until = Infinity }) => keys.has(key) && now < until);
};

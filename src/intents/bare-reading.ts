// "158" after we asked for the temperature of a batch: a number by itself that answers an alarm, or a reading that was not enough.
import { standingIn } from '../core/alarm.ts';
import { decimal } from '../core/decimal.ts';
import type { AskedReading } from '../core/due.ts';
import type { BareNumber, DegreesF, EntryOf } from '../core/entry.ts';
import { fitsStage } from '../core/heat.ts';
import type { Kitchen } from '../core/kitchen.ts';
import { openLots } from '../core/lots.ts';
import { dues } from '../core/schedule.ts';
import { saidBy } from '../core/speakers.ts';
import { list, name, type Reply, say, temperature } from '../core/reply.ts';
import { coolings, foodIn, watches } from '../core/watched.ts';
import { asks, type Decision, type Scene, showing } from './intent.ts';
import { temperature as readTemperature } from './temperature.ts';

/** Assumption: like a question of ours, it is answered within half an hour or not at all. */
const ANSWERED_WITHIN_MS = 30 * 60 * 1000;
/** Assumption: what is colder is a weight, or frozen and said in words. Fresh poultry ends at 26 °F (FSIS; from memory). */
const COLDEST_RAW_F = decimal('26');

export const isBareReading = (degrees: DegreesF): boolean => degrees.gte(COLDEST_RAW_F);

interface At extends Pick<Scene, 'kitchen' | 'at' | 'duesOf'> {
  /** Only what was asked after that; ISO. */
  readonly after?: string | undefined;
}

/** The readings that we have just asked for. */
export function askedReadings({ kitchen, at, after, duesOf = dues }: At): readonly AskedReading[] {
  const now = Date.parse(at);
  const from = Math.max(now - ANSWERED_WITHIN_MS, after === undefined ? -Infinity : Date.parse(after));
  const isNew = (time: string): boolean => Date.parse(time) >= from;
  const rung = new Set(standingIn(kitchen.memory).flatMap(({ key, rungAt }) => (isNew(rungAt) ? [key] : [])));
  return duesOf(kitchen, now).flatMap(({ key, reading }) =>
    reading !== undefined && (rung.has(key) || (reading.since !== undefined && isNew(reading.since)))
      ? [reading]
      : [],
  );
}

/** Who has spoken of an open grind in the last half hour goes on with it: "still 158". */
export const goesOn = ({ lots }: Kitchen, { speaker, at }: Pick<Scene, 'speaker' | 'at'>): boolean =>
  openLots(lots).some(({ facts }) => {
    const last = facts.findLast((each) => each.speaker === speaker);
    return last !== undefined && Date.parse(at) - Date.parse(last.at) <= ANSWERED_WITHIN_MS;
  });

/** What waits for a reading for as long as it takes: food that cools, and raw meat that was too warm. Said by its name. */
export const waitingReadings = ({ memory }: Kitchen): readonly AskedReading[] => [
  ...coolings(memory).map(({ what }) => ({ stage: 'cooling', what }) as const),
  ...watches(memory).flatMap((watch): readonly AskedReading[] => {
    const { is, of, words } = watch;
    if (is !== 'raw' || words[0] !== 'missed' || of.startsWith('#')) return [];
    const food = foodIn(watch);
    return [{ stage: 'raw', what: of, ...(food === undefined ? {} : { food }) }];
  }),
];

/** What the number comes to as a reading, where one was asked for that it can be; undefined where it is none. */
export function bareReading(
  scene: Scene,
  number: BareNumber | undefined,
  after?: string,
): Decision | undefined {
  const degrees = number?.degrees;
  if (degrees === undefined || !isBareReading(degrees)) return undefined;
  const asked = askedReadings({ ...scene, after }).filter(({ stage }) => fitsStage(stage, degrees));
  const [first, ...others] = asked;
  if (first === undefined) return undefined;
  const { stage, lot, what, food } = first;
  const isOne = others.every((other) => other.stage === stage && other.lot === lot && other.what === what);
  if (!isOne && asked.some((each) => each.what !== undefined || each.stage !== stage))
    return asks(say('ask-reading-of-what', { degrees: temperature(degrees), of: list(asked.map(calledIn)) }));
  const entry: EntryOf<'temperature'> =
    what === undefined
      ? { kind: 'temperature', degrees, stage, food: 'raw', ...(isOne ? { lot } : {}) }
      : { kind: 'temperature', degrees, stage, what, food };
  return showing(readTemperature.decide(scene, entry), entry);
}

const calledIn = ({ what, lot = 0 }: AskedReading): Reply =>
  what === undefined ? say('grind-number', { lot }) : say('line', { of: name(what) });

/** "it's 1.3" is about what the speaker has weighed since an alarm rang, sooner than about the alarm. */
export function readingSinceLast(scene: Scene, number: BareNumber | undefined): Decision | undefined {
  const last = saidBy(scene.kitchen.speakers, scene.speaker).at(-1)?.facts.at(-1);
  const after = last === undefined || last.fact.type === 'temperatureRead' ? undefined : last.at;
  return bareReading(scene, number, after);
}

// A number by itself, where an alarm has just asked for a temperature; or behind the name of what waits for a reading.
import type { AskedReading } from '../core/due.ts';
import type { DegreesF } from '../core/entry.ts';
import { fitsStage } from '../core/heat.ts';
import type { Kitchen } from '../core/kitchen.ts';
import { openLots } from '../core/lots.ts';
import type { DuesOf } from '../core/schedule.ts';
import { askedReadings, goesOn, isBareReading, waitingReadings } from '../intents/bare-reading.ts';
import type { Listener } from '../language/listen.ts';
import { type Heard, halfReading, parse, type Said } from '../language/parse.ts';

interface Asked {
  readonly kitchen: Kitchen;
  readonly at: string;
  readonly speaker: string;
  readonly duesOf?: DuesOf;
  /** A question of ours stands: a number by itself is its answer. */
  readonly answering: boolean;
}

/** What was not clear by itself, as a reading; or asked about where ground meat is open and the words look like one. */
export function readingOr(plain: Heard, listener: Listener, text: string, asked: Asked): Heard {
  const isGround = plain.said.length === 0 && openLots(asked.kitchen.lots).length > 0;
  return readingHeard(listener, text, asked) ?? (isGround ? halfReading(listener, text) : undefined) ?? plain;
}

/** Undefined where nothing was asked, or the words are neither. */
function readingHeard(listener: Listener, text: string, asked: Asked): Heard | undefined {
  const rung = askedReadings(asked);
  const readings = [...rung, ...waitingReadings(asked.kitchen)];
  const isOwn = goesOn(asked.kitchen, asked);
  if (readings.length === 0 && !isOwn) return undefined;
  const heard = parse(listener, text, { answering: rung.length > 0 && !asked.answering, reading: true });
  const [said, ...others] = heard.said;
  if (said === undefined || others.length > 0) return undefined;
  if (said.kind === 'amount') return heard;
  if (said.kind !== 'temperature') return undefined;
  const degrees = said.slots['degrees'] as DegreesF;
  if (said.slots['what'] === undefined && !asked.answering && rung.length > 0)
    return { ...heard, said: [{ ...said, kind: 'amount', slots: { number: { degrees } } }] };
  if (said.slots['what'] === undefined) return isOwn && fitsStage('cook', degrees) ? heard : undefined;
  const slots = namedReading(said, readings);
  return slots && { ...heard, said: [{ ...said, slots }] };
}

/** The reading of what an alarm is about. One that cannot be of raw meat is of the same food on the heat. */
function namedReading({ slots }: Said, asked: readonly AskedReading[]): Said['slots'] | undefined {
  const degrees = slots['degrees'] as DegreesF;
  const of = asked.filter(({ what }) => what === slots['what']);
  const [first] = of;
  if (first === undefined || !isBareReading(degrees)) return undefined;
  const { stage } = of.find((each) => fitsStage(each.stage, degrees)) ?? {};
  const { food } = first;
  return {
    ...slots,
    ...(stage === undefined ? {} : { stage }),
    ...(food === undefined ? {} : { food }),
  };
}

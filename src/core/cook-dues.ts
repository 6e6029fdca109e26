// The cook temperature of an open lot: asked for each local day until a batch of the day has passed, and of each batch until it has
// passed, was thrown away or is over. All intervals are assumptions (see docs/food-safety.md).
import type { Due } from './due.ts';
import type { Kitchen } from './kitchen.ts';
import { addDays, dateOf, localOf, msOf } from './local-time.ts';
import { type Batch, batchOver, isCooking, type Lot } from './lots.ts';
import { name, say, temperature } from './reply.ts';
import { after, GROUND_SOURCE, HOUR_MS, limitIn, MINUTE_MS, type Moment, safetyDue } from './safety-due.ts';

/** From grinding to the first question after the cook's temperature. */
const FIRST_COOK_MS = HOUR_MS;
/** On later days that question comes before service. */
const LATER_DAYS = '11:00';
/** Somebody has heard that question, or nobody hears it, and nothing is cooked yet: it comes back. */
const NOTHING_YET_MINUTES = 120;
/** From "cooking a batch" to its temperature. */
const BATCH_MS = 10 * MINUTE_MS;
/** From a reading under the limit to the next: a patty gains some 10 °F in it. */
export const RECHECK_MS = 3 * MINUTE_MS;
/** Somebody has heard that a batch lacks a passing temperature: it comes back, where the kitchen has not set another time. */
const BATCH_AGAIN_MINUTES = 15;

export const cookDues = (kitchen: Kitchen, lot: Lot, now: number): readonly Due[] => [
  ...daysOf(lot, kitchen.settings.timezone, now).flatMap((day) => dayDue(kitchen, lot, day)),
  ...lot.batches.filter(isCooking).map((batch) => batchDue(kitchen, lot, { batch, now })),
];

/** A local date, and when it is asked. */
interface Day extends Moment {
  readonly date: string;
}

/** The newest day that was asked about, and those to come. */
function daysOf(lot: Lot, zone: string, now: number): readonly Day[] {
  const opened = Date.parse(lot.openedAt);
  const [first, today] = [dateOf(localOf(opened, zone)), dateOf(localOf(now, zone))];
  const days = [...new Set([first, addDays(today, -1), today, addDays(today, 1)])]
    .filter((date) => date >= first)
    .map((date) => ({
      date,
      ...(date === first
        ? after(lot.openedAt, FIRST_COOK_MS, now)
        : { at: msOf(`${date}T${LATER_DAYS}`, zone) }),
    }))
    .sort((a, b) => a.at - b.at);
  const newest = days.findLast(({ at }) => at <= now) ?? days[0];
  return days.filter(({ at }) => at >= (newest?.at ?? 0));
}

/** Again after a batch of the day that came to nothing. */
function dayDue(kitchen: Kitchen, lot: Lot, { date, ...moment }: Day): readonly Due[] {
  const zone = kitchen.settings.timezone;
  const ofDay = lot.batches.filter((batch) => dateOf(localOf(Date.parse(batch.at), zone)) === date);
  if (ofDay.some(({ passed }) => passed)) return [];
  const last = ofDay.at(-1);
  const until = msOf(`${addDays(date, 1)}T00:00`, zone);
  const asked = last === undefined || endOf(last) <= moment.at ? moment : { at: endOf(last) };
  if (asked.at >= until) return [];
  const key = `lot:${lot.id}:${lot.entry}:cook:${date}${last === undefined ? '' : `:${last.begun}`}`;
  const words = say('due-cook', { lot: lot.id, part: name(lot.part), ...limitIn(kitchen) });
  const how = {
    againMinutes: NOTHING_YET_MINUTES,
    unheardMinutes: NOTHING_YET_MINUTES,
    until,
    reading: { stage: 'cook', lot: lot.id },
  } as const;
  return [safetyDue(key, asked, [words, GROUND_SOURCE], how)];
}

const endOf = (batch: Batch): number =>
  batch.thrownAt === undefined ? batchOver(batch) : Date.parse(batch.thrownAt) + FIRST_COOK_MS;

/** A batch that was begun by word, and one whose last reading was under the limit. */
function batchDue(kitchen: Kitchen, lot: Lot, { batch, now }: { batch: Batch; now: number }): Due {
  const { begun, at, readings } = batch;
  const { cookAgainMinutes: againMinutes = BATCH_AGAIN_MINUTES } = kitchen.settings;
  const last = readings.at(-1);
  const args = { lot: lot.id, part: name(lot.part), ...limitIn(kitchen) };
  const reading = { stage: 'cook', lot: lot.id, since: last?.at ?? at } as const;
  const how = { againMinutes, until: batchOver(batch), reading };
  if (last === undefined)
    return safetyDue(
      `lot:${lot.id}:batch:${begun}`,
      after(at, BATCH_MS, now),
      [say('due-batch', args), GROUND_SOURCE],
      how,
    );
  const words = say('due-check', { ...args, before: temperature(last.degreesF) });
  return safetyDue(
    `lot:${lot.id}:check:${last.entry}`,
    after(last.at, RECHECK_MS, now),
    [words, GROUND_SOURCE],
    how,
  );
}

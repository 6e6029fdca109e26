// What food safety has a kitchen told: pure, from its open lots and what it watches. Hours are elapsed time, except that a
// new day of a lot begins with the kitchen's own morning. All intervals here are assumptions unless a source is named (see docs/food-safety.md).
import { decimal } from './decimal.ts';
import type { Due } from './due.ts';
import { cookLimit } from './heat.ts';
import type { Kitchen } from './kitchen.ts';
import { addDays, DAY_MS, dateOf, localOf, msOf } from './local-time.ts';
import { type Lot, openLots } from './lots.ts';
import { list, name, type Reply, say, temperature } from './reply.ts';
import { coolings, type Watch, watches } from './watched.ts';

const MINUTE_MS = 60 * 1000;
const HOUR_MS = 60 * MINUTE_MS;
/** From grinding to the first question after the cook's temperature. */
const FIRST_COOK_MS = HOUR_MS;
/** On later days that question comes before service. */
const LATER_DAYS = '11:00';
/** From "cooking a batch" to its temperature. */
const BATCH_MS = 10 * MINUTE_MS;
/** From a reading under the limit to the next: a patty gains some 10 °F in it. */
export const RECHECK_MS = 3 * MINUTE_MS;
/** Warm raw meat rings again: the time that a tub takes to be spread out and put on ice. No hours are granted. */
export const RING_MS = 15 * MINUTE_MS;
/** Raw ground meat keeps 1 to 2 days in the cold: USDA FSIS, FDA storage chart. */
const STORAGE_DAYS = 2;

/**
 * All alarms that stand at an instant: those that are over and not answered, and of each series the newest and the next. An
 * alarm that a reading has answered, or whose lot is closed, is not among them.
 */
export function lotDues(kitchen: Kitchen, now: number): readonly Due[] {
  const lots = openLots(kitchen.lots);
  return [
    ...lots.flatMap((lot) => [
      ...cookDues(kitchen, lot, now),
      ...batchDues(kitchen, lot),
      ...storageDues(lot),
    ]),
    ...watches(kitchen.memory).flatMap((watch) => watchDues(kitchen, watch, now)),
    ...coolingDues(kitchen),
  ];
}

const due = (key: string, at: number, alarm: boolean, ...said: readonly Reply[]): Due => ({
  ...{ key, at, to: 'team', alarm },
  say: [...said, say('check-code')],
});

const limitIn = ({ settings }: Kitchen): Reply['args'] => ({
  limit: temperature(cookLimit('ground', settings.groundCookF) ?? decimal('165')),
});

/** One a local day on which the lot is open, until a batch of that day has begun. */
function cookDues(kitchen: Kitchen, lot: Lot, now: number): readonly Due[] {
  const { timezone } = kitchen.settings;
  const opened = Date.parse(lot.openedAt);
  const [first, today] = [dateOf(localOf(opened, timezone)), dateOf(localOf(now, timezone))];
  const days = [...new Set([first, addDays(today, -1), today, addDays(today, 1)])]
    .filter((day) => day >= first)
    .map((day) => ({
      day,
      at: day === first ? opened + FIRST_COOK_MS : msOf(`${day}T${LATER_DAYS}`, timezone),
    }))
    .sort((a, b) => a.at - b.at);
  const newest = days.findLast(({ at }) => at <= now) ?? days[0];
  return days
    .filter(({ day, at }) => at >= (newest?.at ?? 0) && !hasBatch(lot, day, timezone))
    .map(({ day, at }) =>
      due(
        `lot:${lot.id}:${lot.entry}:cook:${day}`,
        at,
        true,
        say('due-cook', { lot: lot.id, part: name(lot.part), ...limitIn(kitchen) }),
      ),
    );
}

const hasBatch = (lot: Lot, day: string, timezone: string): boolean =>
  lot.batches.some(({ at }) => dateOf(localOf(Date.parse(at), timezone)) === day);

/** A batch that was begun by word, and one whose last reading was under the limit. */
const batchDues = (kitchen: Kitchen, lot: Lot): readonly Due[] =>
  lot.batches.flatMap(({ begun, at, readings, passed }) => {
    if (passed) return [];
    const last = readings.at(-1);
    const args = { lot: lot.id, part: name(lot.part), ...limitIn(kitchen) };
    if (last === undefined)
      return [due(`lot:${lot.id}:batch:${begun}`, Date.parse(at) + BATCH_MS, true, say('due-batch', args))];
    const again = say('due-check', { ...args, before: temperature(last.degreesF) });
    return [due(`lot:${lot.id}:check:${last.entry}`, Date.parse(last.at) + RECHECK_MS, true, again)];
  });

function storageDues({ id, entry, part, openedAt }: Lot): readonly Due[] {
  const opened = Date.parse(openedAt);
  const args = { lot: id, part: name(part) };
  const key = `lot:${id}:${entry}:storage`;
  return [
    due(`${key}:1`, opened + DAY_MS, false, say('due-storage', args)),
    due(`${key}:${STORAGE_DAYS}`, opened + STORAGE_DAYS * DAY_MS, true, say('due-storage-over', args)),
  ];
}

function watchDues(kitchen: Kitchen, watch: Watch, now: number): readonly Due[] {
  const { is, of, entry, at, words } = watch;
  if (words[0] !== 'missed') return [];
  const before = temperature(decimal(words[1] ?? '0'));
  const lot = of.startsWith('#') ? Number(of.slice(1)) : undefined;
  if (lot !== undefined && kitchen.lots.get(lot)?.status !== 'open') return [];
  const label = lot === undefined ? say('line', { of: name(of) }) : say('grind-number', { lot });
  const what = list([label]);
  if (is === 'cook')
    return [
      due(`check:${entry}`, Date.parse(at) + RECHECK_MS, true, say('due-check-food', { what, before })),
    ];
  const rings = Math.max(0, Math.floor((now - Date.parse(at)) / RING_MS));
  return [rings, rings + 1]
    .filter((ring) => ring > 0)
    .map((ring) =>
      due(`raw:${entry}:${ring}`, Date.parse(at) + ring * RING_MS, true, say('due-raw', { what, before })),
    );
}

/** From 135 °F to 70 °F in 2 h, to 41 °F in 6 h in all: Food Code 3-501.14(A). Cooked food only. */
const coolingDues = ({ memory }: Kitchen): readonly Due[] =>
  coolings(memory).flatMap(({ what, begun, since, reached }) => {
    const start = Date.parse(since);
    const args = { what: name(what) };
    const seventy = due(`cooling:${begun}:70`, start + 2 * HOUR_MS, true, say('due-cooling-seventy', args));
    const cold = due(`cooling:${begun}:41`, start + 6 * HOUR_MS, true, say('due-cooling-cold', args));
    return reached === 'none' ? [seventy, cold] : [cold];
  });

/** Lots on which something was cooked without a passing reading, or nothing was read at all: for a summary. */
export const lotsWithoutPass = (kitchen: Kitchen): readonly Lot[] =>
  [...kitchen.lots.values()].filter(
    ({ status, batches }) =>
      status !== 'dropped' && (batches.length === 0 || batches.some(({ passed }) => !passed)),
  );

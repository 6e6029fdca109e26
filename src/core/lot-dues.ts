// What food safety has a kitchen told: pure, from its open lots and what it watches. Hours are elapsed time, except that a
// new day of a lot begins with the kitchen's own morning. All intervals here are assumptions unless a source is named (see docs/food-safety.md).
import { cookDues, RECHECK_MS } from './cook-dues.ts';
import { decimal } from './decimal.ts';
import type { Due } from './due.ts';
import { COLD_F } from './heat.ts';
import type { Kitchen } from './kitchen.ts';
import { DAY_MS } from './local-time.ts';
import { lacksPass, type Lot, openLots } from './lots.ts';
import { list, name, type Reply, say, temperature } from './reply.ts';
import { after, COLD_SOURCE, HOUR_MS, MINUTE_MS, safetyDue } from './safety-due.ts';
import { coolings, foodIn, type Watch, watches } from './watched.ts';

/** Warm raw meat rings again: the time that a tub takes to be spread out and put on ice. No hours are granted. */
export const RAW_MINUTES = 15;
/** Raw ground meat keeps 1 to 2 days in the cold: USDA FSIS, FDA storage chart. */
const STORAGE_DAYS = 2;
/** Somebody has heard that the storage time is over, and the lot is still open. */
const STORAGE_AGAIN_MINUTES = 12 * 60;
/** Somebody has heard that a step of cooling is due, and no reading came. */
const COOLING_AGAIN_MINUTES = 30;

/**
 * All alarms that stand at an instant: those that are over and not answered, and of each series the newest and the next. An
 * alarm that a reading has answered, or whose lot is closed, is not among them.
 */
export function lotDues(kitchen: Kitchen, now: number): readonly Due[] {
  const lots = openLots(kitchen.lots);
  return [
    ...lots.flatMap((lot) => [...cookDues(kitchen, lot, now), ...storageDues(lot, now)]),
    ...watches(kitchen.memory).flatMap((watch) => watchDues(kitchen, watch, now)),
    ...coolingDues(kitchen, now),
  ];
}

function storageDues({ id, entry, part, openedAt }: Lot, now: number): readonly Due[] {
  const args = { lot: id, part: name(part) };
  const key = `lot:${id}:${entry}:storage`;
  const over = after(openedAt, STORAGE_DAYS * DAY_MS, now);
  return [
    safetyDue(`${key}:1`, after(openedAt, DAY_MS, now), [say('due-storage', args)], { alarm: false }),
    safetyDue(`${key}:${STORAGE_DAYS}`, over, [say('due-storage-over', args)], {
      againMinutes: STORAGE_AGAIN_MINUTES,
    }),
  ];
}

function watchDues(kitchen: Kitchen, watch: Watch, now: number): readonly Due[] {
  const { is, of, entry, at, words } = watch;
  if (words[0] !== 'missed') return [];
  const before = temperature(decimal(words[1] ?? '0'));
  const lot = of.startsWith('#') ? Number(of.slice(1)) : undefined;
  if (lot !== undefined && kitchen.lots.get(lot)?.status !== 'open') return [];
  const label = lot === undefined ? say('line', { of: name(of) }) : say('grind-number', { lot });
  const args = { what: list([label]), before };
  const food = foodIn(watch);
  const kind = food === undefined ? {} : { food };
  if (is === 'cook') {
    const reading = { stage: 'cook', what: of, ...kind } as const;
    const check = [say('due-check-food', args)];
    return [safetyDue(`check:${entry}`, after(at, RECHECK_MS, now), check, { reading })];
  }
  const limit = temperature(kitchen.settings.coldF ?? COLD_F);
  const ring = after(at, RAW_MINUTES * MINUTE_MS, now);
  const reading = {
    stage: 'raw',
    since: at,
    ...(lot === undefined ? { what: of, ...kind } : { lot }),
  } as const;
  const how = { againMinutes: RAW_MINUTES, unheardMinutes: RAW_MINUTES, reading };
  const isTo = say('due-raw-gone', { what: args.what, lot: lot === undefined ? 'none' : 'lot' });
  return [safetyDue(`raw:${entry}`, ring, [say('due-raw', { ...args, limit }), isTo, COLD_SOURCE], how)];
}

/** From 135 °F to 70 °F in 2 h, to 41 °F in 6 h in all: Food Code 3-501.14(A). Cooked food only. */
const coolingDues = ({ memory }: Kitchen, now: number): readonly Due[] =>
  coolings(memory).flatMap(({ what, begun, since, reached }) => {
    const args = { what: name(what) };
    const how = { againMinutes: COOLING_AGAIN_MINUTES, reading: { stage: 'cooling', what } } as const;
    const step = (to: string, hours: number, words: Reply): Due =>
      safetyDue(`cooling:${begun}:${to}`, after(since, hours * HOUR_MS, now), [words], how);
    const cold = step('41', 6, say('due-cooling-cold', args));
    return reached === 'none' ? [step('70', 2, say('due-cooling-seventy', args)), cold] : [cold];
  });

/** Lots on which something was cooked without a passing reading, or nothing was read at all: for a summary. */
export const lotsWithoutPass = (kitchen: Kitchen): readonly Lot[] =>
  [...kitchen.lots.values()].filter((lot) => lot.status !== 'dropped' && lacksPass(lot));

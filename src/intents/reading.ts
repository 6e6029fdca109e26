// What a temperature comes to: judged against the limit in force, and said with what to do.
import type { DegreesF } from '../core/entry.ts';
import type { FactOf, LotId } from '../core/facts.ts';
import { COLD_F, cookLimit, isAtLeast, isAtMost, SEVENTY_F } from '../core/heat.ts';
import type { Settings } from '../core/kitchen.ts';
import { RECHECK_MS } from '../core/cook-dues.ts';
import { RAW_MINUTES } from '../core/lot-dues.ts';
import type { Batch } from '../core/lots.ts';
import { list, name, type Reply, say, temperature } from '../core/reply.ts';
import { coldLimit, houseLimit, sourceOf } from './advice.ts';
import type { Response, Scene } from './intent.ts';

type Reading = FactOf<'temperatureRead'>;

const MINUTE_MS = 60 * 1000;
const HOUR_MS = 60 * MINUTE_MS;
/** To 70 °F, and to 41 °F in all: Food Code 3-501.14(A). */
const FIRST_HOURS = 2;
const TOTAL_HOURS = 6;

/** The fact with its limit and whether the reading keeps it. */
export function judged(settings: Settings, fact: Omit<Reading, 'passed' | 'limitF'>, at: string): Reading {
  const { degreesF, stage } = fact;
  switch (stage) {
    case 'raw':
      return {
        ...fact,
        limitF: coldLimit(settings),
        passed: isAtMost(degreesF, coldLimit(settings), settings.unit),
      };
    case 'cooling':
      return { ...fact, ...cooled(settings, fact, at) };
    case 'held':
      return { ...fact, passed: true };
    case 'cook': {
      const limitF = cookLimit(fact.food, settings.groundCookF);
      return { ...fact, limitF, passed: limitF === undefined || isAtLeast(degreesF, limitF, settings.unit) };
    }
  }
}

/** How far cooling food is with a reading: a step that was reached stays so, and one that was late too. */
function cooled(
  { unit }: Settings,
  { degreesF, cooling }: Pick<Reading, 'degreesF' | 'cooling'>,
  at: string,
): Pick<Reading, 'limitF' | 'passed' | 'cooling'> {
  if (cooling === undefined) return { passed: false };
  const { before, since } = cooling;
  const [isCold, isSeventy] = [isAtMost(degreesF, COLD_F, unit), isAtMost(degreesF, SEVENTY_F, unit)];
  const reached = isCold ? 'cold' : isSeventy ? 'seventy' : before.reached;
  const hours = (Date.parse(at) - Date.parse(since)) / HOUR_MS;
  const late = before.late || hours > TOTAL_HOURS || (before.reached === 'none' && hours > FIRST_HOURS);
  const limitF = reached === 'none' ? SEVENTY_F : COLD_F;
  return {
    limitF,
    passed: isAtMost(degreesF, limitF, unit) && !late,
    cooling: { ...cooling, now: { reached, late } },
  };
}

/** A corrected reading is judged by the rules of now. */
export const judgedAnew = (
  { kitchen, at }: Scene,
  { limitF: _, passed: __, ...fact }: Reading,
  degreesF: DegreesF,
): Reading => judged(kitchen.settings, { ...fact, degreesF }, at);

/** What is said of a reading that is recorded. */
export function readingResponse(
  { kitchen }: Scene,
  { fact, lot, entry }: { fact: Reading; lot?: LotId; entry?: string },
): Response {
  const batches = lot === undefined ? [] : (kitchen.lots.get(lot)?.batches ?? []);
  const batch =
    fact.batch ??
    (entry === undefined ? batches.length : batches.findIndex((each) => hasReading(each, entry)) + 1);
  const label =
    lot === undefined || fact.stage === 'raw' || batch === 0
      ? whatWords(fact, lot)
      : say('batch-number', { lot, batch });
  const args = { what: list([label]), degrees: temperature(fact.degreesF) };
  const source = say('line', {
    of: list([...ownLimit(kitchen.settings, fact), sourceOf(fact.stage, fact.food)], 'space'),
  });
  return { say: [...verdict(fact, args, lot), source, say('check-code')] };
}

/** The kitchen's own limit comes before the published one. */
function ownLimit(settings: Settings, fact: Reading): readonly Reply[] {
  if (fact.stage === 'cook' && isHouse(fact)) return [houseLimit(settings)];
  return fact.stage === 'raw' && settings.coldF !== undefined
    ? [say('limit-set', { limit: temperature(settings.coldF) })]
    : [];
}

const hasReading = ({ readings }: Batch, entry: string): boolean =>
  readings.some((each) => each.entry === entry);

const isHouse = ({ food }: Reading): boolean => food !== 'poultry' && food !== 'whole' && food !== 'cooked';

/** What was measured, as said. */
export const whatWords = ({ what, stage }: Pick<Reading, 'what' | 'stage'>, lot?: LotId): Reply => {
  if (what !== undefined) return say('line', { of: name(what) });
  return lot === undefined ? say(stage === 'raw' ? 'raw-meat' : 'ground-meat') : say('grind-number', { lot });
};

type Args = NonNullable<Reply['args']>;

function verdict(fact: Reading, args: Args, lot: LotId | undefined): readonly Reply[] {
  const limit = temperature(fact.limitF ?? COLD_F);
  switch (fact.stage) {
    case 'raw':
      return [say(fact.passed ? 'raw-cold' : 'raw-warm', { ...args, limit, minutes: RAW_MINUTES })];
    case 'held':
      return [say('reading-logged', args)];
    case 'cooling':
      return [coolingVerdict(fact, args)];
    case 'cook':
      if (fact.limitF === undefined) return [say('reading-logged', args)];
      if (!fact.passed)
        return [
          say(fact.food === 'whole' ? 'cook-under-whole' : 'cook-under', {
            ...args,
            limit,
            minutes: RECHECK_MS / MINUTE_MS,
          }),
        ];
      return [
        say('cook-passed', { ...args, limit }),
        ...(lot === undefined ? [] : [say('lot-stays-open', { lot })]),
      ];
  }
}

/** Late is late, whatever the reading: nobody is told that all is well. */
function coolingVerdict({ cooling, limitF = COLD_F }: Reading, args: Args): Reply {
  const { reached, late } = cooling?.now ?? { reached: 'none', late: false };
  if (late) return say('cooling-late', args);
  if (reached === 'cold') return say('cooling-done', args);
  return say('cooling-goes-on', {
    ...args,
    limit: temperature(limitF),
    hours: reached === 'seventy' ? TOTAL_HOURS : FIRST_HOURS,
  });
}

// "burger temp 166": logged with the batch that is cooked of the open lot, and judged.
import { decimal } from '../core/decimal.ts';
import type { EntryOf } from '../core/entry.ts';
import type { FactOf } from '../core/facts.ts';
import { fitsStage, stageOf } from '../core/heat.ts';
import { type Lot, openLots } from '../core/lots.ts';
import { list, say, temperature as degreesOf } from '../core/reply.ts';
import type { Stage } from '../core/safety-facts.ts';
import { saidBy } from '../core/speakers.ts';
import { coolings, GROUND_MEAT, isWatched } from '../core/watched.ts';
import {
  answered,
  asks,
  confirm,
  type Decision,
  type Intent,
  recorded,
  refused,
  type Scene,
} from './intent.ts';
import { withLot } from './lot-route.ts';
import { judged, readingResponse, whatWords } from './reading.ts';

type Temperature = EntryOf<'temperature'>;
type Reading = FactOf<'temperatureRead'>;

export const temperature: Intent<'temperature'> = {
  slots: ['degrees', 'what', 'food', 'stage', 'lot', 'batch', 'bare', 'old'],
  decide: (scene, entry) => {
    const cools = coolings(scene.kitchen.memory);
    const cooling =
      cools.find(({ what }) => what === entry.what) ??
      (entry.stage === 'cooling' && entry.what === undefined && cools.length === 1 ? cools[0] : undefined);
    if (
      cooling !== undefined &&
      (entry.food === 'cooked' || entry.stage === 'cooling' || entry.food === undefined)
    ) {
      const { what, begun, since, reached, late } = cooling;
      return take(
        scene,
        { ...entry, what },
        { stage: 'cooling', cooling: { begun, since, before: { reached, late } } },
      );
    }
    if (entry.stage === 'cooling') return refused(say('nothing-cools'));
    const stage = entry.stage ?? stageOf(entry.food, entry.degrees) ?? askedStage(scene, entry);
    if (stage === undefined) return rawOrCooking(entry);
    if (isPerhapsCount(scene, entry)) {
      const args = {
        what: list([whatWords({ what: entry.what, stage })]),
        degrees: degreesOf(entry.degrees),
      };
      return confirm(say('ask-is-temperature', args), entry);
    }
    return isOfLot(entry, stage)
      ? withLot(scene, entry, (lot) => batchDoubt(entry, lot) ?? take(scene, entry, { stage, lot }))
      : take(scene, entry, { stage });
  },
};

/** Of raw meat that was too warm another cold reading is asked for. */
const askedStage = ({ kitchen }: Scene, { what, degrees }: Temperature): Stage | undefined =>
  what !== undefined && fitsStage('raw', degrees) && isWatched(kitchen.memory, what, ['raw'])
    ? 'raw'
    : undefined;

/** Assumption: where nothing is ground or watched, a number this low behind "burgers" may be how many there are. */
const LIKELY_COOKING_F = decimal('140');
const isPerhapsCount = ({ kitchen }: Scene, { bare, sure, degrees, what = '', food }: Temperature): boolean =>
  bare === true &&
  sure !== true &&
  degrees.lt(LIKELY_COOKING_F) &&
  openLots(kitchen.lots).length === 0 &&
  !isWatched(kitchen.memory, food === 'ground' ? GROUND_MEAT : what);

/** Whole cuts, poultry, soup are of no lot; trim that is not ground yet neither. */
const isOfLot = ({ food, lot, batch }: Temperature, stage: Stage): boolean => {
  if (lot !== undefined || batch !== undefined || food === 'ground' || food === 'raw') return true;
  return stage === 'cook' && (food === undefined || food === 'trim');
};

/** A batch that was thrown away has no temperature; one that is not the next after the known ones is counted otherwise. */
function batchDoubt(entry: Temperature, lot: Lot | undefined): Decision | undefined {
  const { batch, degrees } = entry;
  if (lot === undefined || batch === undefined) return undefined;
  const next = lot.batches.length + 1;
  if (lot.batches[batch - 1]?.thrownAt !== undefined)
    return refused(say('batch-is-gone', { lot: lot.id, batch }));
  if (batch >= 1 && batch <= next) return undefined;
  const args = { lot: lot.id, batch: next, degrees: degreesOf(degrees) };
  return confirm(say('ask-next-batch', args), { ...entry, batch: next });
}

function rawOrCooking(entry: Temperature): Decision {
  const { what, degrees } = entry;
  const args = { what: list([whatWords({ what, stage: 'cook' })]), degrees: degreesOf(degrees) };
  return asks(say('ask-raw-or-cooking', args), {
    choices: { raw: { ...entry, stage: 'raw' }, cooking: { ...entry, stage: 'cook' } },
  });
}

/** Assumption: the same reading by the same person within two minutes is the same one, said again. */
const SAME_MS = 2 * 60 * 1000;

function take(
  scene: Scene,
  { degrees, what, food, batch }: Temperature,
  at: Pick<Reading, 'stage' | 'cooling'> & { lot?: Lot },
): Decision {
  const { lot, stage, cooling } = at;
  const fact = judged(
    scene.kitchen.settings,
    {
      type: 'temperatureRead',
      degreesF: degrees,
      what,
      food,
      stage,
      cooling,
      batch: stage === 'cook' ? batch : undefined,
    },
    scene.at,
  );
  if (isRepeat(scene, fact, lot)) {
    const read = say('reading', { what: list([whatWords(fact, lot?.id)]), degrees: degreesOf(degrees) });
    return answered(say('already', { of: list([read]) }));
  }
  return recorded([{ lot: lot?.id, fact }], (now) => readingResponse(now, { fact, lot: lot?.id }));
}

function isRepeat({ kitchen, speaker, at }: Scene, fact: Reading, lot: Lot | undefined): boolean {
  const last = saidBy(kitchen.speakers, speaker).at(-1)?.facts.at(-1);
  if (last?.fact.type !== 'temperatureRead' || last.lot !== lot?.id) return false;
  const isSame =
    last.fact.degreesF.eq(fact.degreesF) &&
    last.fact.what === fact.what &&
    last.fact.stage === fact.stage &&
    last.fact.batch === fact.batch;
  return isSame && Date.parse(at) - Date.parse(last.at) <= SAME_MS;
}

// "burger temp 166": logged with the batch that is cooked of the open lot, and judged.
import type { EntryOf } from '../core/entry.ts';
import type { FactOf } from '../core/facts.ts';
import { fitsStage, stageOf } from '../core/heat.ts';
import type { Lot } from '../core/lots.ts';
import { list, say, temperature as degreesOf } from '../core/reply.ts';
import type { Stage } from '../core/safety-facts.ts';
import { saidBy } from '../core/speakers.ts';
import { coolings, isWatched } from '../core/watched.ts';
import { answered, asks, type Decision, type Intent, recorded, refused, type Scene } from './intent.ts';
import { withLot } from './lot-route.ts';
import { judged, readingResponse, whatWords } from './reading.ts';

type Temperature = EntryOf<'temperature'>;
type Reading = FactOf<'temperatureRead'>;

export const temperature: Intent<'temperature'> = {
  slots: ['degrees', 'what', 'food', 'stage', 'lot'],
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
    return isOfLot(entry, stage)
      ? withLot(scene, entry, (lot) => take(scene, entry, { stage, lot }))
      : take(scene, entry, { stage });
  },
};

/** Of raw meat that was too warm another cold reading is asked for. */
const askedStage = ({ kitchen }: Scene, { what, degrees }: Temperature): Stage | undefined =>
  what !== undefined && fitsStage('raw', degrees) && isWatched(kitchen.memory, what, ['raw'])
    ? 'raw'
    : undefined;

/** Whole cuts, poultry, soup are of no lot; trim that is not ground yet neither. */
const isOfLot = ({ food, lot }: Temperature, stage: Stage): boolean => {
  if (lot !== undefined || food === 'ground' || food === 'raw') return true;
  return stage === 'cook' && (food === undefined || food === 'trim');
};

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
  { degrees, what, food }: Temperature,
  at: Pick<Reading, 'stage' | 'cooling'> & { lot?: Lot },
): Decision {
  const { lot, stage, cooling } = at;
  const fact = judged(
    scene.kitchen.settings,
    { type: 'temperatureRead', degreesF: degrees, what, food, stage, cooling },
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
    last.fact.degreesF.eq(fact.degreesF) && last.fact.what === fact.what && last.fact.stage === fact.stage;
  return isSame && Date.parse(at) - Date.parse(last.at) <= SAME_MS;
}

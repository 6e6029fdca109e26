// "how's the grind": each open lot in one line, with what its batches came to.
import { type Batch, type Lot, openLots } from '../core/lots.ts';
import { list, moment, type Reply, say, temperature } from '../core/reply.ts';
import { called } from './called.ts';
import { lotWords } from './grind.ts';
import { answered, type Intent, type Scene } from './intent.ts';

export const askGrind: Intent<'askGrind'> = {
  slots: ['lot'],
  decide: (scene) => {
    const open = openLots(scene.kitchen.lots);
    if (open.length === 0) return answered(say('no-grind-open'));
    return answered(...open.map((lot) => lotLine(scene, lot)), say('check-code'));
  },
};

function lotLine(scene: Scene, lot: Lot): Reply {
  const batches = lot.batches.flatMap((batch, at) => batchWords(batch, at + 1));
  return say('grind-stands', {
    grind: list([lotWords(lot)]),
    at: moment(lot.openedAt),
    by: called(scene, lot.openedBy),
    of: list(batches.length === 0 ? [say('no-batch-yet')] : batches),
  });
}

function batchWords({ readings, passed, thrownAt }: Batch, batch: number): readonly Reply[] {
  const last = readings.at(-1);
  if (thrownAt !== undefined) return [say('log-batch-thrown', { batch })];
  if (last === undefined) return [say('batch-cooking', { batch })];
  return [say(passed ? 'batch-passed' : 'batch-under', { batch, degrees: temperature(last.degreesF) })];
}

// What is said of an open lot: what was carried over, a batch on the heat, its end; and of the grinder.
import type { Fact } from '../core/facts.ts';
import { isCooking, lacksPass, type Lot, openLots } from '../core/lots.ts';
import { list, say } from '../core/reply.ts';
import { GROUND_MEAT, isWatched } from '../core/watched.ts';
import { watchedGone } from './discard.ts';
import { answered, type Decision, type Intent, recorded, refused } from './intent.ts';
import { lotAtHand, withOpenLot } from './lot-route.ts';
import { carriedWords, safetyWords } from './safety-words.ts';

export const ofLot = (lot: Lot, ...of: Parameters<typeof list>[0]) =>
  say('of-item', { item: list([say('grind-number', { lot: lot.id })]), of: list(of) });

export const carryOver: Intent<'carryOver'> = {
  slots: ['weight', 'none', 'lot'],
  decide: (scene, entry) =>
    withOpenLot(scene, entry, (lot) => {
      const fact = { type: 'carriedOver', none: entry.none === true, grams: entry.weight } as const;
      return record(lot, fact, ofLot(lot, carriedWords(fact)));
    }),
};

export const batch: Intent<'batch'> = {
  slots: ['lot'],
  decide: (scene, entry) =>
    withOpenLot(scene, entry, (lot) => {
      const last = lot.batches.at(-1);
      const words = say('batch-number', { lot: lot.id, batch: lot.batches.length + 1 });
      if (last !== undefined && isCooking(last) && last.readings.length === 0)
        return answered(
          say('already', { of: list([say('batch-number', { lot: lot.id, batch: lot.batches.length })]) }),
        );
      return record(lot, { type: 'batchBegun' }, say('batch-on', { what: list([words]) }));
    }),
};

/** A batch that is thrown away needs no temperature: its alarms fall silent. */
export const endBatch: Intent<'endBatch'> = {
  slots: ['lot'],
  decide: (scene, entry) =>
    withOpenLot(scene, entry, (lot) => {
      const last = lot.batches.at(-1);
      if (last === undefined || last.thrownAt !== undefined) return refused(say('no-batch', { lot: lot.id }));
      const which = say('batch-number', { lot: lot.id, batch: lot.batches.length });
      return record(
        lot,
        { type: 'batchEnded' },
        say('of-item', { item: list([which]), of: list([say('lot-thrown')]) }),
      );
    }),
};

/** A lot that was warm and is thrown away rings no more. */
export const endLot: Intent<'endLot'> = {
  slots: ['how', 'lot'],
  decide: (scene, entry) => {
    const { memory, lots } = scene.kitchen;
    const isGone = entry.how === 'thrown' && entry.lot === undefined && openLots(lots).length === 0;
    if (isGone && isWatched(memory, GROUND_MEAT)) return watchedGone(GROUND_MEAT);
    return withOpenLot(scene, entry, (lot) => {
      const doubt = entry.how === 'used' && lacksPass(lot) ? [say('lot-without-pass')] : [];
      return record(
        lot,
        { type: 'lotEnded', how: entry.how },
        ofLot(lot, safetyWords({ type: 'lotEnded', how: entry.how })),
        ...doubt,
      );
    });
  },
};

/** With the newest lot, so that its record has it; with none, the next lot takes it over. */
export const cleaned: Intent<'cleaned'> = {
  slots: ['before'],
  decide: (scene, { before }) => {
    const { kitchen } = scene;
    const ground = before === true ? lotAtHand(scene) : undefined;
    if (ground !== undefined)
      return record(ground, { type: 'cleaned', before: true }, ofLot(ground, say('grinder-cleaned-before')));
    const lot = [...kitchen.lots.values()].findLast(({ status }) => status !== 'dropped');
    return recorded([{ lot: lot?.id, fact: { type: 'cleaned' } }], () => ({ say: [say('grinder-cleaned')] }));
  },
};

export const record = (lot: Lot, fact: Fact, ...words: readonly ReturnType<typeof say>[]): Decision =>
  recorded([{ lot: lot.id, fact }], () => ({ say: words }));

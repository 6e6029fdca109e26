// "lot 4471 est 18": what a label says of meat, for the grind that is open, or of the piece on the table for a grind to come.
import { holdsLabel, type Label } from '../core/label.ts';
import { openLots } from '../core/lots.ts';
import { saidBy } from '../core/speakers.ts';
import type { Test } from '../core/test.ts';
import { labelOf as nameOf } from './card.ts';
import { list, say } from '../core/reply.ts';
import { labelOf } from './grind.ts';
import { answered, type Decision, type Intent, recorded, type Scene } from './intent.ts';
import { ofLot, record } from './lot-facts.ts';
import { withOpenLot } from './lot-route.ts';
import { openTestFor } from './route.ts';
import { sourceWords } from './safety-words.ts';

export const grindSource: Intent<'grindSource'> = {
  slots: ['supplierLot', 'establishment', 'supplier', 'produced', 'lot'],
  decide: (scene, entry) => {
    const label = labelOf(entry) ?? {};
    const test = entry.lot === undefined ? pieceOf(scene) : undefined;
    if (test !== undefined) return ofPiece(scene, test, label);
    return withOpenLot(scene, entry, (lot) => {
      const read = ofLot(lot, sourceWords(label));
      const isThere = holdsLabel(lot.sources, label);
      return isThere ? answered(read) : record(lot, { type: 'sourced', ...label }, read);
    });
  },
};

/** The piece on the table, where no grind is open or the speaker has just put it there. */
function pieceOf(scene: Scene): Test | undefined {
  const test = openTestFor(scene, undefined);
  if (test === undefined || openLots(scene.kitchen.lots).length === 0) return test;
  const last = saidBy(scene.kitchen.speakers, scene.speaker).at(-1)?.facts.at(-1);
  const isNew = last?.fact.type === 'received' || last?.fact.type === 'sourced';
  return isNew && last.test === test.id ? test : undefined;
}

function ofPiece(scene: Scene, test: Test, label: Label): Decision {
  const read = say('of-item', { item: list([nameOf(scene, test)]), of: list([sourceWords(label)]) });
  if (holdsLabel(test.labels, label)) return answered(read);
  const fact = { type: 'sourced', ...label } as const;
  return recorded([{ test: test.id, item: test.item, fact }], () => ({ say: [read] }));
}

// "7.40 a pound": what the piece on the table costs that has no price yet. Without such a piece it is talk.
import type { EntryOf } from '../core/entry.ts';
import { openTests } from '../core/kitchen.ts';
import { list, say } from '../core/reply.ts';
import { labelOf } from './card.ts';
import { asks, type Intent, showing } from './intent.ts';
import { isUnpriced, price } from './price.ts';

export const piecePrice: Intent<'piecePrice'> = {
  slots: ['price'],
  decide: (scene, { price: perLb }: EntryOf<'piecePrice'>) => {
    const lacking = openTests(scene.kitchen).filter(isUnpriced);
    const items = [...new Set(lacking.map(({ item }) => item))];
    const [only, other] = items;
    if (only === undefined) return { is: 'ignored' };
    if (other === undefined) {
      const entry = { kind: 'price', item: only, price: perLb } as const;
      return showing(price.decide(scene, entry), entry);
    }
    const labels = list(lacking.map((test) => labelOf(scene, test)));
    return asks(say('ask-which-test', { items: labels }), {
      wants: { held: { kind: 'price', price: perLb }, slot: 'item' },
    });
  },
};

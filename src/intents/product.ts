// "product tenderloin 3.1 worth 18": a part that is sold, weighed like any other, with what it brings as its credit.
import type { EntryOf } from '../core/entry.ts';
import { becomes, type Intent } from './intent.ts';

export const product: Intent<'product'> = {
  slots: ['part', 'weight', 'credit', 'item'],
  decide: (_scene, entry: EntryOf<'product'>) =>
    becomes({ ...entry, kind: 'weigh', mode: 'set', sold: true }),
};

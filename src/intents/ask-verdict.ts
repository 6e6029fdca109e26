// "cut or buy ribeye": the verdict as it stands, or at another purchase price.
import type { EntryOf } from '../core/entry.ts';
import { answered, type Intent } from './intent.ts';
import { withItem } from './route.ts';
import { verdictLines } from './verdict-lines.ts';

export const askVerdict: Intent<'askVerdict'> = {
  slots: ['item', 'price'],
  costs: true,
  decide: (scene, entry: EntryOf<'askVerdict'>) =>
    withItem(scene, entry, (item) => answered(...verdictLines(scene, item, entry.price))),
};

// Words that only answer: they mean something where a question stands (see app/converse.ts), and nothing without one.
import type { EntryOf } from '../core/entry.ts';
import { name as called, say } from '../core/reply.ts';
import { heardBy } from './card.ts';
import { bareReading } from './bare-reading.ts';
import { type Intent, recorded, answered } from './intent.ts';
import { openTestFor } from './route.ts';

const IGNORED = { is: 'ignored' } as const;

export const yes: Intent<'yes'> = { slots: [], decide: () => IGNORED };
export const no: Intent<'no'> = { slots: [], decide: () => IGNORED };
export const amount: Intent<'amount'> = {
  slots: ['number'],
  decide: (scene, { number }) => bareReading(scene, number) ?? IGNORED,
};
export const choice: Intent<'choice'> = { slots: ['option'], decide: () => IGNORED };

export const help: Intent<'help'> = {
  slots: [],
  decide: (scene) => answered(say('help'), ...heardBy(scene)),
};

/** The bare name of a cut turns the speaker to its open test. */
export const name: Intent<'name'> = {
  slots: ['item', 'part'],
  decide: (scene, { item }: EntryOf<'name'>) => {
    const test = item === undefined ? undefined : openTestFor(scene, item);
    if (test === undefined) return IGNORED;
    const said = say('turned-to', { item: called(test.item) });
    if (scene.kitchen.speakers.get(scene.speaker)?.tests.at(-1) === test.id) return answered(said);
    return recorded([{ test: test.id, item: test.item, fact: { type: 'turned' } }], () => ({ say: [said] }));
  },
};

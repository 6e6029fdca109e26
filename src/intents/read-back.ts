// "read that back": the state of the speaker's test, for the ear; once it is closed, how it was closed.
import { openTests } from '../core/kitchen.ts';
import { name, say } from '../core/reply.ts';
import type { Test } from '../core/test.ts';
import { cardLines } from './card.ts';
import { answered, type Intent, refused, type Scene } from './intent.ts';
import { openTestFor } from './route.ts';

export const readBack: Intent<'readBack'> = {
  slots: [],
  decide: (scene) => {
    const test = openTestFor(scene, undefined);
    if (test !== undefined) return answered(...cardLines(scene, test));
    const open = openTests(scene.kitchen);
    if (open.length > 0) return answered(...open.flatMap((each) => cardLines(scene, each)));
    const closed = lastClosed(scene);
    return closed === undefined
      ? refused(say('nothing-open'))
      : answered(say('closed', { item: name(closed.item) }), ...cardLines(scene, closed));
  },
};

/** The newest of the tests that the speaker wrote to. */
function lastClosed({ kitchen, speaker }: Scene): Test | undefined {
  const theirs = kitchen.speakers.get(speaker)?.tests ?? [];
  return theirs.flatMap((id) => kitchen.tests.get(id) ?? []).findLast(({ status }) => status === 'closed');
}

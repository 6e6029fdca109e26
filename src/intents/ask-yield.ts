// "ribeye yield": pooled over the closed tests, the spread between them, and the open test so far.
import type { EntryOf } from '../core/entry.ts';
import { poolOf } from '../core/kitchen.ts';
import { poolFigures } from '../core/pool.ts';
import { name, number, percent, type Reply, say } from '../core/reply.ts';
import { figuresOf, line } from './card.ts';
import { answered, type Intent, refused, type Scene } from './intent.ts';
import { openTestFor, withItem } from './route.ts';

export const askYield: Intent<'askYield'> = {
  slots: ['item'],
  decide: (scene, entry: EntryOf<'askYield'>) =>
    withItem(scene, entry, (item) => {
      const lines = [...pooledLine(scene, item), ...openLine(scene, item)];
      return lines.length === 0 ? refused(say('no-tests-yet', { item: name(item) })) : answered(...lines);
    }),
};

function pooledLine(scene: Scene, item: string): readonly Reply[] {
  const pooled = poolFigures(poolOf(scene.kitchen, item), {});
  if (pooled === undefined) return [];
  const spread =
    pooled.yieldDeviationPct === undefined
      ? [say('one-test')]
      : [say('yield-spread', { points: number(pooled.yieldDeviationPct, 1) })];
  return [
    line(
      say('yield-of', { item: name(item), share: percent(pooled.yieldPct), tests: pooled.tests }),
      ...spread,
    ),
  ];
}

function openLine(scene: Scene, item: string): readonly Reply[] {
  const test = openTestFor(scene, item);
  const portions = test?.item === item ? figuresOf(scene, test).portions : undefined;
  return portions === undefined
    ? []
    : [say('yield-so-far', { item: name(item), share: percent(portions.yieldPct) })];
}

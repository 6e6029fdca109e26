// Which test an entry belongs to: the one its item names, else the speaker's own, else the only open one, else ask.
import type { Entry } from '../core/entry.ts';
import { openTests } from '../core/kitchen.ts';
import { name, say } from '../core/reply.ts';
import type { Test } from '../core/test.ts';
import { asks, type Decision, lacking, refused, type Scene } from './intent.ts';

type Routed = Entry & { readonly item?: string };

/** Decides with the open test that the entry belongs to. */
export function withTest(scene: Scene, entry: Routed, decide: (test: Test) => Decision): Decision {
  const test = openTestFor(scene, entry.item);
  if (test !== undefined) return decide(test);
  const item = entry.item ?? scene.carried;
  if (item !== undefined) return refused(say('no-open-test', { item: name(item) }));
  const open = openTests(scene.kitchen);
  if (open.length === 0) return refused(say('nothing-open'));
  return asks(say('ask-which-test', { items: open.map((each) => each.item).join(', ') }), { wants: lacking(entry, 'item') });
}

/** The open test of an item, or the speaker's, or the only one. */
export function openTestFor(scene: Scene, said: string | undefined): Test | undefined {
  const open = openTests(scene.kitchen);
  const mine = scene.kitchen.speakers.get(scene.speaker)?.test;
  const item = said ?? scene.carried;
  if (item !== undefined) {
    const ofItem = open.filter((test) => test.item === item);
    return ofItem.find((test) => test.id === mine) ?? ofItem.at(-1);
  }
  return open.find((test) => test.id === mine) ?? (open.length === 1 ? open[0] : undefined);
}

/** The item that a question or a price is about: said, of the open test, or of the test that the speaker last had. */
export function itemFor(scene: Scene, said: string | undefined): string | undefined {
  if (said !== undefined) return said;
  if (scene.carried !== undefined) return scene.carried;
  const open = openTestFor(scene, undefined);
  if (open !== undefined) return open.item;
  if (openTests(scene.kitchen).length > 0) return undefined;
  const mine = scene.kitchen.speakers.get(scene.speaker)?.test;
  const last = mine === undefined ? undefined : scene.kitchen.tests.get(mine);
  return (last ?? newestTest(scene))?.item;
}

const newestTest = (scene: Scene): Test | undefined => [...scene.kitchen.tests.values()].filter((test) => test.status === 'closed').at(-1);

/** Decides with an item, or asks for it. */
export function withItem(scene: Scene, entry: Routed, decide: (item: string) => Decision): Decision {
  const item = itemFor(scene, entry.item);
  if (item !== undefined) return decide(item);
  return asks(say('ask-which-item'), { wants: lacking(entry, 'item') });
}

// Which test an entry belongs to: the one its item names, else the speaker's own, else the only open one, else ask.
import type { Entry } from '../core/entry.ts';
import type { TestId } from '../core/facts.ts';
import { openTests } from '../core/kitchen.ts';
import { list, name, say } from '../core/reply.ts';
import type { Test } from '../core/test.ts';
import { labelOf } from './card.ts';
import { asks, type Decision, lacking, refused, type Scene } from './intent.ts';

type Routed = Entry & { readonly item?: string };

/** Decides with the open test that the entry belongs to; a question about it is bound to that test. */
export function withTest(scene: Scene, entry: Routed, decide: (test: Test) => Decision): Decision {
  const test = testOf(scene, entry);
  if (test !== undefined) return bound(decide(test), test.id);
  const asked = entry.test === undefined ? undefined : scene.kitchen.tests.get(entry.test);
  const item = asked?.item ?? entry.item ?? scene.carried;
  if (item !== undefined) return refused(say('no-open-test', { item: name(item) }));
  const open = openTests(scene.kitchen);
  if (open.length === 0) return refused(say('nothing-open'));
  const items = list(open.map((each) => labelOf(scene, each)));
  return asks(say('ask-which-test', { items }), { wants: lacking(entry, 'item') });
}

/** What the answers make stays with the test, whatever the speaker or others turn to in between. */
function bound(decision: Decision, test: TestId): Decision {
  if (decision.is !== 'asked') return decision;
  const { choices, again, wants } = decision.ask;
  return {
    ...decision,
    ask: {
      ...decision.ask,
      choices: Object.fromEntries(Object.entries(choices).map(([word, entry]) => [word, { test, ...entry }])),
      again: again && { ...again, accepts: { test, ...again.accepts } },
      wants: wants && { ...wants, held: { test, ...wants.held } },
    },
  };
}

function testOf(scene: Scene, entry: Routed): Test | undefined {
  if (entry.test === undefined) return openTestFor(scene, entry.item);
  const asked = scene.kitchen.tests.get(entry.test);
  return asked?.status === 'open' ? asked : undefined;
}

/** The open test of an item, or of any: the one that the speaker last wrote to, else the newest of the item or the only one. */
export function openTestFor(scene: Scene, said: string | undefined): Test | undefined {
  const open = openTests(scene.kitchen);
  const item = said ?? scene.carried;
  const fitting = item === undefined ? open : open.filter((test) => test.item === item);
  const own = scene.kitchen.speakers.get(scene.speaker)?.tests ?? [];
  const mine = own.findLast((id) => fitting.some((test) => test.id === id));
  if (mine !== undefined) return fitting.find((test) => test.id === mine);
  return item !== undefined || open.length === 1 ? fitting.at(-1) : undefined;
}

/** A test that fits: the open one as for an entry, else the newest closed one of the item; undefined where an entry would be asked. */
export function testAtHand(
  scene: Scene,
  said: string | undefined,
  fits: (test: Test) => boolean,
): Test | undefined {
  const open = openTestFor(scene, said);
  if (open !== undefined && fits(open)) return open;
  const item = itemFor(scene, said);
  return item === undefined
    ? undefined
    : newest(scene, (test) => test.item === item && test.status === 'closed' && fits(test));
}

/** The item that a question or a price is about: said, of the open test, or of the test that the speaker last had. */
export function itemFor(scene: Scene, said: string | undefined): string | undefined {
  if (said !== undefined) return said;
  if (scene.carried !== undefined) return scene.carried;
  const open = openTestFor(scene, undefined);
  if (open !== undefined) return open.item;
  if (openTests(scene.kitchen).length > 0) return undefined;
  const mine = scene.kitchen.speakers.get(scene.speaker)?.tests.at(-1);
  const last = mine === undefined ? undefined : scene.kitchen.tests.get(mine);
  return (last ?? newest(scene, ({ status }) => status === 'closed'))?.item;
}

/** The newest test at hand of those that fit. */
export const newest = (scene: Scene, fits: (test: Test) => boolean): Test | undefined =>
  [...scene.kitchen.tests.values()]
    .filter(fits)
    .sort((a, b) => a.id - b.id)
    .at(-1);

/** Decides with an item, or asks for it. */
export function withItem(scene: Scene, entry: Routed, decide: (item: string) => Decision): Decision {
  const item = itemFor(scene, entry.item);
  if (item !== undefined) return decide(item);
  return asks(say('ask-which-item'), { wants: lacking(entry, 'item') });
}

// What a test can do to the service: one flat list, the same in this process and over HTTP.
// Parameters and results are plain JSON.
import { arm, heal, type Fault } from './faults/faults.ts';
import { awaitCalls, type Call, type CallFilter, callsIn, repeatedTexts, type Repeated } from './log.ts';
import * as files from './scenario/files.ts';
import * as groups from './scenario/groups.ts';
import * as numbering from './scenario/numbering.ts';
import { addUser, block, deactivate, unblock } from './scenario/people.ts';
import { press, pressAnswer } from './scenario/presses.ts';
import { deleteOwn, editOwn, say, start } from './scenario/talk.ts';
import { seen, seenFromBot } from './scenario/view.ts';
import type { World } from './world/world.ts';

const SCENARIO = {
  ...{ addUser, block, unblock, deactivate },
  ...groups,
  ...{ say, start, editOwn, deleteOwn, press, pressAnswer },
  ...files,
  ...numbering,
  ...{ seen, seenFromBot },
  fail: ({ faults }: World, fault: Fault): number => arm(faults, fault),
  heal: ({ faults }: World, id?: number): void => {
    heal(faults, id);
  },
  calls: ({ log }: World, filter?: CallFilter): readonly Call[] => callsIn(log, filter),
  /** Calls that took effect, whatever the bot was told. */
  effects: ({ log }: World, filter?: CallFilter): readonly Call[] => callsIn(log, { ...filter, took: true }),
  countEffects: ({ log }: World, filter?: CallFilter): number =>
    callsIn(log, { ...filter, took: true }).length,
  repeatedTexts: ({ log }: World): readonly Repeated[] => repeatedTexts(log),
  awaitCalls: ({ log }: World, filter: CallFilter, count: number): Promise<readonly Call[]> =>
    awaitCalls(log, filter, count),
  /** Puts the clock of the service forward: presses and links expire, counters empty. A poll under way does not notice. */
  advance: (world: World, seconds: number): void => {
    world.aheadMs += seconds * 1000;
  },
};

type Bound<F> = F extends (world: World, ...parameters: infer P) => infer R ? (...parameters: P) => R : never;

export type Scenario = { readonly [Name in keyof typeof SCENARIO]: Bound<(typeof SCENARIO)[Name]> };

export function scenarioOf(world: World): Scenario {
  const bound = Object.entries(SCENARIO).map(([name, act]) => [
    name,
    (...parameters: readonly unknown[]) =>
      (act as (...all: readonly unknown[]) => unknown)(world, ...parameters),
  ]);
  return Object.fromEntries(bound) as Scenario;
}

// Any name comes back as it was given, and nothing else changes by it.
import { describe, expect, it } from 'vitest';
import { name, say } from '../../../../src/core/reply.ts';
import { HOSTILE_NAMES } from './hostile-names.ts';
import type { Opened } from './opened.ts';
import { AT, GRAMS, LEDGER, POOL, QUESTION, RECEIVED, recorded, turn } from './samples.ts';

export function namesContract(opened: Opened): void {
  describe('names of any kind', () => {
    const everyones = Reflect.ownKeys(Object.prototype);

    it.each(HOSTILE_NAMES)('are kept as they are: %s', async (_, hostile) => {
      const facts = [
        recorded(
          { ...RECEIVED, item: hostile },
          { test: 1, item: hostile, entry: hostile, speaker: hostile },
        ),
      ];
      const views = {
        tests: [
          {
            id: 1,
            item: hostile,
            status: 'closed',
            openedAt: AT,
            closedAt: AT,
            figures: { [hostile]: '1' },
          } as const,
        ],
        lots: [],
        memory: [[hostile, LEDGER] as const],
        pools: [[hostile, POOL] as const],
        names: [['part', hostile] as const],
      };
      const question = {
        ...QUESTION,
        asked: say('ask-any', { [hostile]: name(hostile) }),
        wants: { held: { kind: 'weigh', [hostile]: GRAMS }, slot: hostile },
      };
      await opened.store.append(
        turn(hostile, { speaker: hostile, text: hostile, reply: hostile, facts, views, question }),
      );
      await opened.reopen();
      expect(await opened.wholeLog('home')).toEqual(facts);
      expect(await opened.store.views('home')).toEqual(views);
      expect((await opened.store.load('home'))?.questions).toEqual([[hostile, question]]);
      expect(await opened.store.replyTo('home', hostile)).toBe(hostile);
      expect(await opened.store.speakerFacts('home', hostile, 1)).toEqual(facts);
      expect(await opened.store.closedTests('home', hostile, 1)).toEqual(views.tests);
      // Own names of what came back, and nothing on the objects of everyone.
      expect(Object.keys((await opened.store.views('home')).tests[0]?.figures ?? {})).toEqual([hostile]);
      expect(Reflect.ownKeys(Object.prototype)).toEqual(everyones);
    });
  });
}

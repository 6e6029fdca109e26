// No kitchen sees or touches another, whatever id it gives.
import { describe, expect, it } from 'vitest';
import type { TestRow } from '../../../../src/app/ports/store.ts';
import type { Opened } from './opened.ts';
import { AT, LEDGER, NO_VIEWS, opening, POOL, QUESTION, SETTINGS, turn } from './samples.ts';

export function twoKitchensContract(opened: Opened): void {
  describe('two kitchens', () => {
    it('never see each other, also with the same ids of messages, speakers, tests and entries', async () => {
      await opened.store.create('annex', SETTINGS);
      const views = {
        lots: [],
        memory: [['a', LEDGER]],
        pools: [['a', POOL]],
        names: [['item', 'a']],
      } as const;
      const closing: TestRow = { id: 2, item: 'ribeye', status: 'closed', openedAt: AT, closedAt: AT };
      await opened.store.append({ ...opening('m1', 1), question: QUESTION });
      await opened.store.append(
        turn('m2', { views: { ...views, tests: [closing] }, reply: 'for home only' }),
      );
      expect(await opened.everythingOf('annex')).toEqual({
        loaded: {
          settings: SETTINGS,
          openTests: [],
          lastTest: 0,
          lots: [],
          lastLot: 0,
          memory: [],
          pools: [],
          names: [],
          questions: [],
        },
        log: [],
        views: NO_VIEWS,
      });
      expect(await opened.store.replyTo('annex', 'm2')).toBeUndefined();
      expect(await opened.store.testFacts('annex', 1)).toEqual([]);
      expect(await opened.store.speakerFacts('annex', 'lead', 9)).toEqual([]);
      expect(await opened.store.closedTests('annex', 'ribeye', 9)).toEqual([]);
    });

    it('write under the same ids without touching each other', async () => {
      await opened.store.create('annex', SETTINGS);
      await opened.store.append({ ...opening('m1', 1), question: QUESTION });
      const before = await opened.everythingOf('home');
      const theirs = { ...opening('m1', 1, 'striploin'), kitchen: 'annex', question: null };
      expect(await opened.store.append(theirs)).toBe('stored');
      expect(await opened.everythingOf('home')).toEqual(before);
      expect((await opened.store.testFacts('annex', 1)).map(({ item }) => item)).toEqual(['striploin']);
    });

    it.each(['home ', 'HOME', 'hom', 'home%', 'home\u0000', '', "home' OR '1'='1"])('are not opened by a guess: %j', async (guess) => {
    await opened.store.append(opening('m1', 1));
    expect(await opened.store.load(guess)).toBeUndefined();
    expect(await opened.wholeLog(guess)).toEqual([]);
    expect(await opened.store.replyTo(guess, 'm1')).toBeUndefined();
  }); // prettier-ignore
  });
}

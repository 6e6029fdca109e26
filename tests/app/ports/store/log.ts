// The log keeps its order and is read in parts.
import { describe, expect, it } from 'vitest';
import type { TestRow } from '../../../../src/app/ports/store.ts';
import type { Opened } from './opened.ts';
import { AT, NO_VIEWS, opening, RECEIVED, recorded, TRIM, turn } from './samples.ts';

export function logContract(opened: Opened): void {
  describe('the log', () => {
    it('keeps the order in which facts were appended, whatever their times say', async () => {
      const times = ['2026-03-06T10:00:00.000Z', '2026-03-06T09:00:00.000Z', '2026-03-06T11:00:00.000Z'];
      for (const [index, at] of times.entries())
        await opened.store.append(
          turn(`m${index}`, { facts: [recorded(TRIM, { at }), recorded(RECEIVED, { at })] }),
        );
      const log = (await opened.wholeLog('home')).map(({ at, fact }) => [at, fact.type]);
      expect(log).toEqual(times.flatMap((at) => [[at, 'weighed'], [at, 'received']])); // prettier-ignore
    });

    it('is read whole while it grows', async () => {
      for (let index = 0; index < 2500; index += 1)
        await opened.store.append(turn(`m${index}`, { facts: [recorded(TRIM, { entry: `e${index}` })] }));
      const entries: string[] = [];
      for await (const { entry } of opened.store.facts('home')) {
        if (entries.length === 0)
          await opened.store.append(turn('late', { facts: [recorded(TRIM, { entry: 'late' })] }));
        entries.push(entry);
      }
      expect(entries).toEqual([...Array.from({ length: 2500 }, (_, index) => `e${index}`), 'late']);
    });

    it('gives the facts of one test', async () => {
      await opened.store.append(opening('m1', 1));
      await opened.store.append(opening('m2', 2));
      await opened.store.append(turn('m3', { facts: [recorded(TRIM, { entry: 'm3', test: 1 })] }));
      expect((await opened.store.testFacts('home', 1)).map(({ entry }) => entry)).toEqual(['m1', 'm3']);
      expect(await opened.store.testFacts('home', 3)).toEqual([]);
    });

    it('gives the newest facts of a speaker, oldest first', async () => {
      for (const [index, speaker] of ['lead', 'cutter', 'lead', 'lead', 'cutter'].entries())
        await opened.store.append(
          turn(`m${index}`, { facts: [recorded(TRIM, { entry: `m${index}`, speaker })] }),
        );
      expect((await opened.store.speakerFacts('home', 'lead', 2)).map(({ entry }) => entry)).toEqual([
        'm2',
        'm3',
      ]);
      expect(await opened.store.speakerFacts('home', 'nobody', 2)).toEqual([]);
    });

    it('gives the facts of the open tests, and the number of the last test of all', async () => {
      for (const test of [1, 2, 3]) await opened.store.append(opening(`m${test}`, test));
      const done = [1, 3].map((id): TestRow => ({ id, item: 'ribeye', status: id === 1 ? 'closed' : 'dropped', openedAt: AT })); // prettier-ignore
      await opened.store.append(turn('m4', { views: { ...NO_VIEWS, tests: done } }));
      const loaded = await opened.store.load('home');
      expect(loaded?.openTests.map((facts) => facts.map(({ test }) => test))).toEqual([[2]]);
      expect(loaded?.lastTest).toBe(3);
    });
  });
}

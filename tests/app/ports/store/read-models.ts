// What is computed from the log and kept beside it: laid over row by row, or replaced whole.
import { describe, expect, it } from 'vitest';
import type { TestRow } from '../../../../src/app/ports/store.ts';
import type { Opened } from './opened.ts';
import { AT, LEDGER, NO_VIEWS, opening, POOL, QUESTION, recorded, SETTINGS, TRIM, turn } from './samples.ts';

export function readModelsContract(opened: Opened): void {
  describe('read models', () => {
    const closed = (id: number, closedAt: string, item = 'ribeye'): TestRow => ({
      id,
      item,
      status: 'closed',
      openedAt: AT,
      closedAt,
      figures: { usableCostPerLb: '9.382142857142857142857142857142857142857', yieldPct: '78.87323944' },
    });
    const [early, late] = ['2026-03-06T17:00:00.000Z', '2026-03-07T17:00:00.000Z'] as const;

    it('lays changed rows over the old ones and leaves the others', async () => {
      const first = {
        tests: [closed(1, early)],
        lots: [],
        memory: [['a', LEDGER]],
        pools: [['a', POOL]],
        names: [['item', 'a']],
      } as const;
      const next = {
        tests: [closed(2, late)],
        lots: [],
        memory: [
          ['a', LEDGER.slice(1)],
          ['b', []],
        ],
        pools: [['b', POOL]],
        names: [
          ['item', 'a'],
          ['part', 'a'],
        ],
      } as const;
      await opened.store.append(turn('m1', { views: first }));
      await opened.store.append(turn('m2', { views: next }));
      await opened.reopen();
      expect(await opened.store.views('home')).toEqual({
        tests: [closed(1, early), closed(2, late)],
        lots: [],
        memory: next.memory,
        pools: [
          ['a', POOL],
          ['b', POOL],
        ],
        names: next.names,
      });
    });

    it('takes a test back from closed to open', async () => {
      await opened.store.append(turn('m1', { views: { ...NO_VIEWS, tests: [closed(1, early)] } }));
      const open: TestRow = { id: 1, item: 'ribeye', status: 'open', openedAt: AT };
      await opened.store.append(turn('m2', { views: { ...NO_VIEWS, tests: [open] } }));
      expect((await opened.store.views('home')).tests).toEqual([open]);
      expect(await opened.store.closedTests('home', 'ribeye', 9)).toEqual([]);
    });

    it('gives the closed tests of an item newest first, up to a limit', async () => {
      const tests = [closed(1, late), closed(2, early), closed(3, late), closed(4, late, 'striploin')];
      await opened.store.append(turn('m1', { views: { ...NO_VIEWS, tests } }));
      await opened.store.append(opening('m2', 5));
      expect((await opened.store.closedTests('home', 'ribeye', 9)).map(({ id }) => id)).toEqual([3, 1, 2]);
      expect((await opened.store.closedTests('home', 'ribeye', 2)).map(({ id }) => id)).toEqual([3, 1]);
      expect(await opened.store.closedTests('home', 'salmon', 2)).toEqual([]);
    });

    it('replaces all of one kitchen, and leaves its log, its questions and the other kitchens alone', async () => {
      await opened.store.create('annex', SETTINGS);
      const views = {
        tests: [closed(1, early)],
        lots: [],
        memory: [['a', LEDGER]],
        pools: [['a', POOL]],
        names: [['item', 'a']],
      } as const;
      const facts = [recorded(TRIM)];
      for (const kitchen of ['home', 'annex'])
        await opened.store.append(turn('m1', { kitchen, facts, views, question: QUESTION }));
      const other = await opened.everythingOf('annex');
      const anew = { ...NO_VIEWS, tests: [closed(7, late)] };
      await opened.store.replaceViews('home', anew);
      await opened.reopen();
      expect(await opened.store.views('home')).toEqual(anew);
      expect(await opened.wholeLog('home')).toEqual(facts);
      expect((await opened.store.load('home'))?.questions).toEqual([['lead', QUESTION]]);
      expect(await opened.everythingOf('annex')).toEqual(other);
    });

    it('replaces nothing where one of the new rows cannot be written', async () => {
      const views = { ...NO_VIEWS, names: [['item', 'ribeye']] as const };
      await opened.store.append(turn('m1', { views }));
      const figures = { usableCostPerLb: (() => '1') as unknown as string };
      const broken = { ...NO_VIEWS, tests: [closed(1, early), { ...closed(2, early), figures }] };
      await expect(opened.store.replaceViews('home', broken)).rejects.toThrow();
      expect(await opened.store.views('home')).toEqual(views);
    });
  });
}

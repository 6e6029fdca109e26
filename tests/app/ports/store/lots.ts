// Lots of ground meat: their facts by number, and which are open or newest.
import { describe, expect, it } from 'vitest';
import type { LotRow } from '../../../../src/app/ports/store.ts';
import type { Fact } from '../../../../src/core/facts.ts';
import type { Opened } from './opened.ts';
import { AT, NO_VIEWS, recorded, turn } from './samples.ts';

const GROUND: Fact = { type: 'ground', part: 'trim', from: [] };
const row = (id: number, status: LotRow['status']): LotRow => ({ id, status, openedAt: AT });

export function lotsContract(opened: Opened): void {
  describe('lots', () => {
    const grinding = (lot: number, status: LotRow['status']) =>
      turn(`m${lot}`, {
        facts: [recorded(GROUND, { entry: `m${lot}.0`, lot })],
        views: { ...NO_VIEWS, lots: [row(lot, status)] },
      });

    it('gives the facts of a lot by its number, and no others', async () => {
      await opened.store.append(grinding(1, 'open'));
      await opened.store.append(grinding(2, 'open'));
      await opened.store.append(
        turn('m3', { facts: [recorded({ type: 'cleaned' }, { entry: 'm3.0', lot: 1 })] }),
      );
      await opened.reopen();
      const facts = await opened.store.lotFacts('home', 1);
      expect(facts.map(({ entry, lot }) => [entry, lot])).toEqual([['m1.0', 1], ['m3.0', 1]]); // prettier-ignore
      expect(await opened.store.lotFacts('home', 9)).toEqual([]);
    });

    it('loads the open lots and the newest one, and the last number given', async () => {
      for (const [lot, status] of [
        [1, 'open'],
        [2, 'closed'],
        [3, 'closed'],
        [4, 'dropped'],
      ] as const)
        // prettier-ignore
        await opened.store.append(grinding(lot, status));
      await opened.reopen();
      const loaded = await opened.store.load('home');
      expect(loaded?.lots.map(([first]) => first?.lot)).toEqual([1, 4]);
      expect(loaded?.lastLot).toBe(4);
      expect(await opened.store.newestLots('home', 2)).toEqual([4, 3]);
    });

    it('gives the tests that were closed since an instant, newest first', async () => {
      const closed = (id: number, closedAt: string) =>
        ({ id, item: 'ribeye', status: 'closed', openedAt: AT, closedAt }) as const;
      const tests = [
        closed(1, '2026-03-04T15:00:00.000Z'),
        closed(2, AT),
        closed(3, '2026-03-07T15:00:00.000Z'),
      ];
      await opened.store.append(turn('m1', { views: { ...NO_VIEWS, tests } }));
      expect(await opened.store.closedSince('home', AT, 9)).toEqual([3, 2]);
      expect(await opened.store.closedSince('home', AT, 1)).toEqual([3]);
    });
  });
}

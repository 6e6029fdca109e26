// Kitchens are created once and found by their own id only.
import { describe, expect, it } from 'vitest';
import type { Opened } from './opened.ts';
import { opening, SETTINGS } from './samples.ts';

export function kitchensContract(opened: Opened): void {
  describe('kitchens', () => {
    it('knows nothing of a kitchen that was not created', async () => {
      expect(await opened.store.load('elsewhere')).toBeUndefined();
    });

    it('loads a new kitchen empty, with its settings exact', async () => {
      await opened.reopen();
      expect(await opened.store.load('home')).toEqual({
        settings: SETTINGS,
        openTests: [],
        lastTest: 0,
        lots: [],
        lastLot: 0,
        memory: [],
        pools: [],
        names: [],
        questions: [],
      });
    });

    it('lists the kitchens', async () => {
      await opened.store.create('annex', SETTINGS);
      expect([...(await opened.store.kitchens())].sort()).toEqual(['annex', 'home']);
    });

    it('does not create a kitchen over another', async () => {
      await opened.store.append(opening('m1', 1));
      await expect(opened.store.create('home', { ...SETTINGS, unit: 'kg' })).rejects.toThrow();
      expect((await opened.store.load('home'))?.settings.unit).toBe('lb');
    });

    it('stores nothing for a kitchen that was not created', async () => {
      await expect(opened.store.append(opening('m1', 1))).resolves.toBe('stored');
      await expect(opened.store.append({ ...opening('m1', 1), kitchen: 'elsewhere' })).rejects.toThrow();
      expect(await opened.wholeLog('elsewhere')).toEqual([]);
    });
  });
}

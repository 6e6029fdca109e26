// A question stands for its speaker until a turn clears it.
import { describe, expect, it } from 'vitest';
import type { Opened } from './opened.ts';
import { QUESTION, turn } from './samples.ts';

export function questionsContract(opened: Opened): void {
  describe('questions', () => {
    const standing = async (): Promise<unknown> => (await opened.store.load('home'))?.questions;

    it('stand until they are cleared, one a speaker', async () => {
      await opened.store.append(turn('m1', { question: QUESTION }));
      await opened.store.append(turn('m2', { speaker: 'cutter', question: { ...QUESTION, repeats: 0 } }));
      await opened.store.append(turn('m3', { question: null }));
      await opened.reopen();
      expect(await standing()).toEqual([['cutter', { ...QUESTION, repeats: 0 }]]);
    });

    it('are left where a turn does not say', async () => {
      await opened.store.append(turn('m1', { question: QUESTION }));
      await opened.store.append(turn('m2'));
      expect(await standing()).toEqual([['lead', QUESTION]]);
    });

    it('give way to the next one', async () => {
      await opened.store.append(turn('m1', { question: QUESTION }));
      await opened.store.append(turn('m2', { question: { ...QUESTION, repeats: 2 } }));
      expect(await standing()).toEqual([['lead', { ...QUESTION, repeats: 2 }]]);
    });

    it('may be cleared where none stands', async () => {
      await opened.store.append(turn('m1', { question: null }));
      expect(await standing()).toEqual([]);
    });
  });
}

// What every engine must do, whatever is behind it. `spoken` gives the sound of a sentence that the engine is to hear.
import { describe, expect, it } from 'vitest';
import type { Expected, Recogniser, Sound } from '../../../src/app/ports/speech.ts';

export interface Engine {
  readonly open: () => Recogniser;
  readonly spoken: (words: string) => Promise<Sound>;
  readonly expected: Expected;
}

export const SAID = 'fat three and a half pounds';
const SECOND = 16_000;

export function recogniserContract(name: string, { open, spoken, expected }: Engine): void {
  describe(name, () => {
    const heard = async (sound: Sound) => {
      const recogniser = open();
      try {
        return await recogniser.hear(sound, expected);
      } finally {
        await recogniser.close();
      }
    };

    it('hears what is said, in small letters, and says how surely', async () => {
      const { words, confidence } = await heard(await spoken(SAID));
      expect(words).toBe(SAID);
      expect(confidence).toBeGreaterThan(0);
      expect(confidence).toBeLessThanOrEqual(1);
    });

    it('is not sure of anything in silence', async () => {
      const { confidence } = await heard({ samples: new Float32Array(SECOND) });
      expect(confidence).toBeLessThan(0.25);
    });

    it('hears notes that come at once, each for itself', async () => {
      const recogniser = open();
      const notes = await Promise.all([spoken(SAID), spoken('bone two point nine')]);
      const found = await Promise.all(notes.map((sound) => recogniser.hear(sound, expected)));
      await recogniser.close();
      expect(found.map(({ words }) => words)).toEqual([SAID, 'bone two point nine']);
    });

    it('hears again after it was closed', async () => {
      const recogniser = open();
      const sound = await spoken(SAID);
      await recogniser.hear(sound, expected);
      await recogniser.close();
      expect((await recogniser.hear(sound, expected)).words).toBe(SAID);
      await recogniser.close();
    });
  });
}

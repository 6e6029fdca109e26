// From bytes to words: what the ear is told to expect, and what is no entry.
import { describe, expect, it } from 'vitest';
import { hearerAt, plainHearer } from '../../src/app/hear.ts';
import { type Expected, type Recogniser, SpeechError } from '../../src/app/ports/speech.ts';
import { scratchOpener } from '../../src/app/scratch.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';
import { ear, voice } from '../speech/given.ts';

const open = scratchOpener(() => openSqlite(':memory:'), voice);
const SETTINGS = {
  unit: 'lb',
  currency: 'USD',
  timezone: 'UTC',
  language: 'en',
  laborAvoidable: true,
} as const;
const decode = () => Promise.resolve({ samples: new Float32Array(16_000) });
const BYTES = new Uint8Array(1);

/** An engine that hears what it is told to, and keeps what it was told to expect. */
function engineHearing(words: string, confidence: number) {
  const asked: Expected[] = [];
  const recogniser: Recogniser = {
    name: 'told',
    hear: (_, expected) => {
      asked.push(expected);
      return Promise.resolve({ words, confidence });
    },
    close: () => Promise.resolve(),
  };
  return { asked, hearer: { voice, ear, decode, recogniser } };
}

describe('what is heard', () => {
  it.each([
    ['trim one point three', 0.95, 'words'],
    ['trim one point three', 0.6, 'words'],
    ['trim one point three', 0.1, 'nothing'],
    ['', 0.9, 'nothing'],
  ])('"%s" at %d is %s', async (words, confidence, is) => {
    const { hearer } = engineHearing(words, confidence);
    expect(await plainHearer(hearer)(BYTES, 'ana')).toMatchObject({ is });
  });

  it('tells a trouble with the note, and throws a bug', async () => {
    const { hearer } = engineHearing('done', 1);
    const failing = (error: Error) =>
      plainHearer({ ...hearer, decode: () => Promise.reject(error) })(BYTES, 'ana');
    expect(await failing(new SpeechError('truncated', 'in a page'))).toEqual({
      is: 'trouble',
      fault: 'truncated',
      reply: { id: 'speech-truncated' },
    });
    await expect(failing(new Error('a bug'))).rejects.toThrow('a bug');
  });
});

describe('what may be said', () => {
  async function grammarAfter(...lines: readonly string[]): Promise<string> {
    const kitchen = await open(SETTINGS);
    for (const [index, text] of lines.entries())
      await kitchen.take({
        id: `m${index}`,
        speaker: 'ana',
        at: '2026-03-06T09:00:00Z',
        text,
        role: 'owner',
      });
    const { asked, hearer } = engineHearing('done', 1);
    await hearerAt(hearer, kitchen)(BYTES, 'ana');
    return asked[0]?.grammar ?? '';
  }

  it('listens for answers only while a question stands', async () => {
    expect(await grammarAfter('ribeye 14.2 lb at 7.40', 'trim 1.1')).not.toContain('k_yes');
    expect(await grammarAfter('ribeye 14.2 lb at 7.40', 'trim 1.1', 'trim 1.3')).toContain('k_yes');
  });

  it("listens for the kitchen's own cuts and parts", async () => {
    expect(await grammarAfter('ribeye 14.2 lb at 7.40')).not.toMatch(/known_item> = .*zebra shank/);
    const named = await grammarAfter('zebra shank 14.2 lb at 7.40', 'flap 1.1');
    expect(named).toMatch(/known_item> = .*zebra shank/);
    expect(named).toMatch(/known_part> = .*flap/);
  });
});

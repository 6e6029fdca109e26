// What becomes of entries that were heard: recorded, asked about or left, by how surely; and what answers to such a question do.
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Answer } from '../../src/app/ports/table.ts';
import { scratchOpener } from '../../src/app/scratch.ts';
import { loadVoice } from '../../src/app/voice.ts';
import { openSqlite } from '../../src/storage/sqlite/open.ts';

const voice = loadVoice(join(new URL('../..', import.meta.url).pathname, 'intents'), 'en');
const open = scratchOpener(() => openSqlite(':memory:'), voice);
const SETTINGS = {
  unit: 'lb',
  currency: 'USD',
  timezone: 'UTC',
  language: 'en',
  laborAvoidable: true,
} as const;

/** A line as [words, confidence] where it was heard, or as plain words where it was typed. */
type Line = string | readonly [words: string, confidence: number];

async function answersTo(...lines: readonly Line[]): Promise<readonly Answer[]> {
  const kitchen = await open(SETTINGS);
  const answers: Answer[] = [];
  for (const [index, line] of lines.entries()) {
    const [text, confidence] = typeof line === 'string' ? [line, undefined] : line;
    const heard = confidence === undefined ? {} : { heard: { confidence } };
    const at = `2026-03-06T09:${String(index).padStart(2, '0')}:00Z`;
    answers.push(await kitchen.take({ id: `m${index}`, speaker: 'ana', at, text, role: 'owner', ...heard }));
  }
  return answers;
}

const lastOf = async (...lines: readonly Line[]): Promise<Answer> => {
  const last = (await answersTo(...lines)).at(-1);
  if (last === undefined) throw new Error('nothing was said');
  return last;
};

const RIBEYE = 'ribeye 14.2 lb at 7.40';
const SURE = 0.97;
const UNSURE = 0.6;

describe('what was heard well', () => {
  it('is recorded, and shown with what was recorded', async () => {
    const { outcome, reply, entries } = await lastOf(RIBEYE, ['trim one point three', SURE]);
    expect([outcome, entries]).toEqual([
      'recorded',
      [{ kind: 'weigh', mode: 'set', part: 'trim', weightLb: '1.3' }],
    ]);
    expect(reply).toContain('trim one point three');
    expect(reply).toContain('1.3 lb');
  });

  it('shows nothing of the kind for what was typed', async () => {
    expect((await lastOf(RIBEYE, 'trim one point three')).reply).not.toContain('Heard');
  });

  it('need not be heard so well where it is a question, which records nothing', async () => {
    const fair = 0.87;
    expect(await lastOf(RIBEYE, ['where are we', fair])).toMatchObject({ outcome: 'answered' });
    expect((await lastOf(RIBEYE, ['where are we', fair])).reply).toContain('Heard: where are we');
    expect(await lastOf(RIBEYE, ['where are we', UNSURE])).toMatchObject({ outcome: 'asked' });
    expect(await lastOf(RIBEYE, ['done', fair])).toMatchObject({ outcome: 'asked' });
    expect(await lastOf(RIBEYE, ['trim one point three', fair])).toMatchObject({ outcome: 'asked' });
  });

  it('stays silent where it is not for us', async () => {
    expect(await lastOf(RIBEYE, ['good morning everybody', SURE])).toMatchObject({
      outcome: 'ignored',
      reply: '',
    });
  });

  it.each([
    ['ribeye is eighty oh five now', 'far above the price before'],
    ['ribeye is seventy four cents now', 'far below it'],
  ])('is asked about all the same where the price is startling: %s', async (words) => {
    const { outcome, entries } = await lastOf(RIBEYE, [words, SURE]);
    expect([outcome, entries]).toEqual(['asked', []]);
  });

  it('records a startling price after a yes', async () => {
    const { outcome, entries } = await lastOf(
      RIBEYE,
      ['ribeye is eighteen oh five now', SURE],
      ['yes', SURE],
    );
    expect([outcome, entries]).toEqual([
      'recorded',
      [{ kind: 'price', item: 'ribeye', pricePerLb: '18.05' }],
    ]);
  });
});

describe('what was not heard well', () => {
  const half: Line = ['trim one point three', UNSURE];

  it('is asked about with its words, and not recorded', async () => {
    const { outcome, reply, entries, ask } = await lastOf(RIBEYE, half);
    expect([outcome, entries]).toEqual(['asked', []]);
    expect(ask).toContain('trim one point three');
    expect(reply).toBe(ask);
  });

  it.each<[string, Line]>([
    ['a yes that was typed', 'yes'],
    ['a yes that was heard well', ['yes', SURE]],
    ['the same again, typed', 'trim 1.3'],
    ['the same again, heard well', ['trim one point three', SURE]],
  ])('is recorded after %s', async (_, answer) => {
    const { outcome, entries } = await lastOf(RIBEYE, half, answer);
    expect(outcome).toBe('recorded');
    expect(entries).toMatchObject([{ part: 'trim', weightLb: '1.3' }]);
  });

  it.each<[string, Line]>([
    ['a yes that was half heard', ['yes', UNSURE]],
    ['the same again, half heard: it may be the same mistake', half],
  ])('waits on after %s', async (_, answer) => {
    const { outcome, entries } = await lastOf(RIBEYE, half, answer);
    expect([outcome, entries]).toEqual(['asked', []]);
  });

  it('is let go after the second answer that was half heard, and that is said', async () => {
    const { outcome, reply, entries } = await lastOf(RIBEYE, half, ['yes', UNSURE], ['yes', UNSURE]);
    expect([outcome, entries]).toEqual(['answered', []]);
    expect(reply).toContain('Not recorded');
  });

  it.each(['no', 'scratch that'])('is dropped after "%s", and nothing else is', async (word) => {
    const answers = await answersTo(RIBEYE, 'fat 0.9', half, word, 'where are we');
    expect(answers[3]?.reply).toContain('not recorded');
    expect(answers[4]?.reply).toContain('fat 0.9 lb');
    expect(answers[4]?.reply).not.toContain('trim');
  });

  it('is put right by the number alone', async () => {
    const { outcome, entries } = await lastOf(RIBEYE, 'fat 0.9', half, 'no, 1.8');
    expect(outcome).toBe('recorded');
    expect(entries).toMatchObject([{ part: 'trim', weightLb: '1.8' }]);
  });

  it('of several numbers is not put right by one, nor is the entry before it', async () => {
    const said: Line = ['striploin ten point five pounds at eight dollars', UNSURE];
    const answers = await answersTo(RIBEYE, 'trim 1.1', said, 'no, 1.8', 'no', 'where are we');
    expect(answers[3]).toMatchObject({ outcome: 'asked', entries: [] });
    expect(answers[5]?.reply).toContain('trim 1.1 lb');
  });

  it('is still asked about where it is implausible', async () => {
    const { outcome, entries, ask } = await lastOf(RIBEYE, ['trim thirty one pounds', UNSURE], 'yes');
    expect([outcome, entries]).toEqual(['asked', []]);
    expect(ask).toContain('31 lb');
  });

  it('is told as lost where something else is said', async () => {
    const { outcome, reply } = await lastOf(RIBEYE, half, 'fat 0.9');
    expect(outcome).toBe('recorded');
    expect(reply).toContain('not recorded');
  });

  it('does not take a half heard undo for one', async () => {
    const answers = await answersTo(RIBEYE, 'trim 1.1', ['scratch that', UNSURE], 'no', 'where are we');
    expect(answers[2]).toMatchObject({ outcome: 'asked', entries: [] });
    expect(answers[4]?.reply).toContain('trim 1.1 lb');
  });
});

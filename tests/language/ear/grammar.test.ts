// The grammar of the ear against the reader: one language for typing and for hearing.
import { describe, expect, it } from 'vitest';
import { judgeWords } from '../../../src/app/judge-words.ts';
import { plainListener } from '../../../src/app/voice.ts';
import { expected, voice } from '../../speech/given.ts';
import { seeded } from '../seeded.ts';
import { sentenceOf } from './sentences-of.ts';

const SETTINGS = {
  unit: 'lb',
  currency: 'USD',
  timezone: 'UTC',
  language: 'en',
  laborAvoidable: true,
} as const;
const listener = plainListener(voice.language, SETTINGS);
const read = (line: string) =>
  judgeWords(voice, listener, { settings: SETTINGS, line, at: '2026-03-06T15:00:00Z' });

describe('the grammar', () => {
  it('lets nothing through that the reader leaves in silence', () => {
    const draw = seeded(11);
    const lost = new Set<string>();
    for (let count = 0; count < 3000; count += 1) {
      const line = sentenceOf(expected().grammar, draw);
      const { entries, ask } = read(line);
      if (entries.length === 0 && ask === null) lost.add(line);
    }
    expect([...lost]).toEqual([]);
  });

  it('never makes two entries of one sentence', () => {
    const draw = seeded(12);
    const lines = Array.from({ length: 3000 }, () => sentenceOf(expected({ stage: 'open' }).grammar, draw));
    expect(lines.filter((line) => read(line).entries.length > 1)).toEqual([]);
  });

  it('knows how each of its words sounds', () => {
    const { grammar, pronounced, spelled } = expected({ stage: 'asked' });
    const sounding = new Set([...pronounced, ...spelled].map(([word]) => word));
    const words =
      grammar
        .split('\n')
        .slice(3)
        .join(' ')
        .replace(/<[^>]*>|\/[^/]*\//g, ' ')
        .match(/[a-z']+/g) ?? [];
    expect(words.length).toBeGreaterThan(200);
    expect([...new Set(words)].filter((word) => !sounding.has(word))).toEqual([]);
  });

  it.each([
    ['took', 'labor'],
    ['drop', 'remove'],
    ['cut or buy', 'askVerdict'],
    ['packing is', 'packing'],
    ['burger', 'temperature'],
  ])('hears "%s" with no test in sight, though other kinds are likelier', (_, kind) => {
    expect(expected().grammar).toMatch(new RegExp(`/0.01/ <k_${kind}>`));
    expect(expected({ stage: 'open' }).grammar).toMatch(new RegExp(`^<k_${kind}> = `, 'm'));
  });

  it('takes a name of the kitchen that no dictionary has', () => {
    const { grammar, spelled } = expected({ items: new Set(['zander loin']) });
    expect(grammar).toMatch(/known_item> = .*zander loin/);
    expect(spelled).toContainEqual(['zander', 'Z AE N D ER']);
  });
});

describe('what is likelier misheard than said', () => {
  it.each([
    ['cod fourteen ounces', {}, true],
    ['strip ten pounds', {}, true],
    ['cod fourteen ounces', { items: new Set(['cod']) }, false],
    ['cod forty ounces', { items: new Set(['cod']) }, true],
    ['twelve portions of sixty four ounces', {}, true],
    ['forty portions of sixteen ounces', {}, false],
    ['ribeye forty pounds', {}, false],
    ['striploin ten pounds', {}, false],
    ['fat fourteen ounces', {}, false],
    ['done', {}, false],
  ])('"%s" in %o: %s', (words, listening, isUnusual) => {
    expect(expected(listening).isUnusual(words)).toBe(isUnusual);
  });
});

describe('a number that sounds much like another', () => {
  it.each([
    ['forty portions of six ounces', true],
    ['fat fourteen ounces', true],
    ['fat twelve ounces', false],
    ['trim one point nine', false],
    ['done', false],
  ])('"%s": %s', (words, isMixable) => {
    expect(expected({}).isMixable(words)).toBe(isMixable);
  });
});

describe('what is near', () => {
  const { near } = expected();

  it.each([
    ['ribeye eighteen pounds at eight oh five', 'ribeye eighteen pounds at eighty oh five'],
    ['ribeye fourteen pounds at seven forty', 'ribeye forty pounds at seven forty'],
    ['trim one point three', 'trim one point three eight'],
    ['trim one point three eight', 'trim one point three'],
    ['fat twenty one pounds', 'fat twenty pounds'],
    ['trim six ounces', 'trim six pounds'],
    ['short loin six pounds', 'pork loin six pounds'],
    ['trim one point three', 'fat one point three'],
    ['no two and a half pounds', 'bone two and a half pounds'],
    ['bone two and a half pounds', 'no two and a half pounds'],
  ])('"%s" has "%s"', (words, rival) => {
    expect(near(words)).toContain(rival);
  });

  it('is never what was heard, nor the same twice', () => {
    const found = near('ribeye twenty one point three five pounds at eight oh five');
    expect(found).not.toContain('ribeye twenty one point three five pounds at eight oh five');
    expect(new Set(found).size).toBe(found.length);
    expect(found.filter((line) => /_| {2}/.test(line))).toEqual([]);
  });

  it.each(['done', 'where are we', ''])('there is nothing near "%s"', (words) => {
    expect(near(words)).toEqual([]);
  });
});

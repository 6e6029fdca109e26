// Every message that the code says has a wording, and every wording is said somewhere.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { messageNames, renderer } from '../../src/language/render.ts';

const root = new URL('../..', import.meta.url).pathname;
const wording = readFileSync(join(root, 'intents/en/replies.ftl'), 'utf8');
const messages = new Set(messageNames(wording));

const filesIn = (folder: string, end: string): readonly string[] =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith(end))
    .map((file) => readFileSync(join(root, folder, file), 'utf8'));

const code = filesIn('src', '.ts').join('\n');
const language = filesIn('src/language', '.ts').join('\n');
const sentences = filesIn('intents/en/sentences', '.yaml').join('\n');

const found = (text: string, pattern: RegExp): readonly string[] =>
  [...text.matchAll(pattern)].map((match) => match[1] ?? '');
const kebab = (name: string): string => name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);

/** The first argument of every say(…): one message, or one of two. */
const said = found(code, /\bsay(?:Cost)?\(\s*([^;]*?)(?:,\s*[{a-z]|\))/g).flatMap((first) =>
  found(first, /(?<!=== )'([a-z][\w-]*)'/g),
);
/** What is asked about a doubt of the language has the name of the doubt. */
const doubts = [
  ...found(language, /(?:doubt|code): '(\w+)'/g),
  ...found(sentences, /^\s*-?\s*ask: (\w+)$/gm),
];
/** Messages whose name ends in something that the code puts in: "missing-price". Doubts are looked at by name. */
const prefixes = found(code, /\bsay(?:Cost)?\(`([a-z-]+-)\$\{/g).filter((prefix) => prefix !== 'ask-');

describe('the wording of replies', () => {
  it('has every message that is said', () => {
    expect(said.length).toBeGreaterThan(100);
    expect(said.filter((name) => !messages.has(name))).toEqual([]);
  });

  it('has a question for every doubt of the language', () => {
    const asked = doubts.filter((doubt) => doubt !== 'priceUnit').map((doubt) => `ask-${kebab(doubt)}`);
    expect(asked.filter((name) => !messages.has(name))).toEqual([]);
  });

  it('has a message for everything that a verdict can lack, count or leave out', () => {
    const verdict = readFileSync(join(root, 'src/core/verdict.ts'), 'utf8');
    const kinds = (type: string): readonly string[] =>
      found(found(verdict, new RegExp(`type ${type} = ([^;]*);`, 'g'))[0] ?? '', /'(\w+)'/g);
    const wanted = [
      ...kinds('VerdictGap').map((gap) => `missing-${gap}`),
      ...kinds('CostKind').map((kind) => `kind-${kind}`),
    ];
    expect(wanted.length).toBeGreaterThan(9);
    expect(wanted.filter((name) => !messages.has(name))).toEqual([]);
  });

  it('has nothing that is never said', () => {
    const literals = new Set(found(code, /'([a-z][\w-]*)'/g));
    const isSaid = (name: string): boolean =>
      literals.has(name) ||
      prefixes.some((prefix) => name.startsWith(prefix)) ||
      doubts.some((doubt) => name === `ask-${kebab(doubt)}`);
    expect([...messages].filter((name) => !isSaid(name))).toEqual([]);
  });

  it('is read without an error', () => {
    expect(() => renderer('en', wording)).not.toThrow();
  });
});

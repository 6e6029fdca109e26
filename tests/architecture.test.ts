// Who may import whom, and three rules of style that a reader of src/ relies on. A type or a dynamic import counts.
import { readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import ts from 'typescript';
import { expect, it } from 'vitest';

/** Where the files of a folder may import from, besides their own folder and packages. */
const MAY_IMPORT: Readonly<Record<string, RegExp>> = {
  core: /^src\/core\//,
  intents: /^src\/(core|intents)\//,
  language: /^src\/(core|language)\//,
  app: /^src\/(app|core|intents|language)\//,
  channels: /^src\/(app\/ports|core)\//,
  speech: /^src\/(app\/ports|core)\//,
  papers: /^src\/(app\/ports|core|papers)\//,
  storage: /^src\/(app\/ports|core)\//,
  'main.ts': /^src\//,
  'open-speech.ts': /^src\//,
  'open-kitchens.ts': /^src\//,
  'start-chat.ts': /^src\//,
  'start-telegram.ts': /^src\//,
  'config.ts': /^(?!src\/)/,
};
const WORDLESS = ['core', 'intents', 'app'];
const PACKAGES: Readonly<Record<string, RegExp>> = {
  core: /^zod$/,
  'core/decimal.ts': /^decimal\.js$/,
  'core/local-time.ts': /^temporal-polyfill$/,
  intents: /^(?!)/,
  'config.ts': /^zod$/,
};

/** The imports of a file that break the rules. */
function forbidden(path: string, source: string): readonly string[] {
  const [, folder = '', unit = ''] = path.split('/');
  // A channel, an engine, a store is one file or one folder: it may import itself, and none of its neighbours.
  const own = folder in MAY_IMPORT && unit !== '' ? `src/${folder}/${unit}/` : '';
  const computed = /\bimport\((?!\s*['"])/.test(source) ? ['import(…)'] : [];
  const named = ts.preProcessFile(source, true, true).importedFiles.map(({ fileName }) => fileName);
  const broken = named.filter((name) => {
    if (!name.startsWith('.')) return !mayUse(path, folder, name);
    const target = posix.join(posix.dirname(path), name);
    return !(MAY_IMPORT[folder]?.test(target) === true || (own !== '' && target.startsWith(own)));
  });
  return [...computed, ...broken];
}

function mayUse(path: string, folder: string, name: string): boolean {
  if (name.startsWith('node:')) return !['core', 'intents'].includes(folder);
  if (name === 'decimal.js') return path === 'src/core/decimal.ts';
  return (PACKAGES[path.slice('src/'.length)] ?? PACKAGES[folder] ?? /./).test(name);
}

/** Texts of four words and more that a person would read. What is thrown is a bug's message, not a reply. */
function sentences(source: string): readonly string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (
      ts.isThrowStatement(node) ||
      (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.SuperKeyword)
    )
      return;
    const text =
      ts.isStringLiteralLike(node) || ts.isTemplateHead(node) || ts.isTemplateMiddleOrTemplateTail(node)
        ? node.text
        : '';
    if (/[\p{L}']+(\s+[\p{L}']+){3,}/u.test(text)) found.push(text);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile('source.ts', source, ts.ScriptTarget.Latest));
  return found;
}

const readsEnvironment = (source: string): boolean =>
  /\bprocess\s*\??\.?\s*(\.env\b|\[)|\{[^}]*\benv\b[^}]*\}\s*=\s*process\b|import\.meta\.env|from 'node:process'/.test(
    source,
  );

const lines = (source: string): number => source.trimEnd().split('\n').length;

const files = readdirSync('src', { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .map((name) => ({
    path: `src/${name.replaceAll('\\', '/')}`,
    source: readFileSync(`src/${name}`, 'utf8'),
  }));

it('lets each folder import only what it may', () => {
  expect(files.length).toBeGreaterThan(80);
  expect(
    files.flatMap(({ path, source }) => forbidden(path, source).map((name) => `${path} imports ${name}`)),
  ).toEqual([]);
});

it('keeps every file within 200 lines', () => {
  expect(
    files.filter(({ source }) => lines(source) > 200).map(({ path, source }) => `${path} ${lines(source)}`),
  ).toEqual([]);
});

it('keeps sentences for people in the data of the language', () => {
  const wordless = files.filter(({ path }) => WORDLESS.includes(path.split('/')[1] ?? ''));
  expect(wordless.flatMap(({ path, source }) => sentences(source).map((text) => `${path}: ${text}`))).toEqual(
    [],
  );
});

it('reads the environment in one file', () => {
  expect(files.filter(({ source }) => readsEnvironment(source)).map(({ path }) => path)).toEqual([
    'src/config.ts',
  ]);
});

it.each([
  ['src/core/a.ts', `import type { Scene } from '../intents/intent.ts';`],
  ['src/core/a.ts', `import { Decimal } from 'decimal.js';`],
  ['src/core/a.ts', `import { readFileSync } from 'node:fs';`],
  ['src/intents/a.ts', `import { parse } from '../language/parse.ts';`],
  ['src/language/a.ts', `export { say } from '../app/voice.ts';`],
  ['src/language/a.ts', `type Kind = import('../intents/index.ts').Kind;`],
  ['src/app/a.ts', `const { openSqlite } = await import('../storage/sqlite/open.ts');`],
  ['src/app/a.ts', 'const any = await import(`../storage/${name}.ts`);'],
  ['src/channels/a.ts', `import { openTable } from '../app/turn.ts';`],
  ['src/channels/one/a.ts', `import { chat } from '../terminal.ts';`],
  ['src/channels/one/a.ts', `import { open } from '../../storage/sqlite/open.ts';`],
  ['src/storage/other/a.ts', `import type { Connection } from '../sqlite/connection.ts';`],
  ['src/papers/a.ts', `import { openTable } from '../app/turn.ts';`],
  ['src/app/a.ts', `import { draw } from '../papers/pictures/draw.ts';`],
  ['src/speech/a.ts', `import '../channels/terminal.ts';`],
  ['src/config.ts', `import { decimal } from './core/decimal.ts';`],
  ['src/else/a.ts', `import { decimal } from '../core/decimal.ts';`],
])('sees a forbidden import in %s: %s', (path, source) => {
  expect(forbidden(path, source)).toHaveLength(1);
});

it('sees a sentence, but not a message of a bug', () => {
  expect(sentences(`const ask = 'what does the tub weigh';`)).toHaveLength(1);
  expect(sentences('const ask = `what does the tub ${name}`;')).toHaveLength(1);
  expect(sentences(`throw new Error('this is a bug of ours');`)).toEqual([]);
});

it.each([
  'process.env.HOME',
  `process['env']`,
  `const { env } = process;`,
  `import { env } from 'node:process';`,
])('sees the environment read by %s', (source) => {
  expect(readsEnvironment(source)).toBe(true);
});

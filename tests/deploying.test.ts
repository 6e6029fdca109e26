// The container file and the unit, as far as they can be checked without an engine: what they name exists, and no secret is in them.
import { existsSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readConfig } from '../src/config.ts';

const lines = readFileSync('docs/deploying/Containerfile', 'utf8')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'));
const of = (word: string): readonly string[] =>
  lines.filter((line) => line.startsWith(`${word} `)).map((line) => line.slice(word.length + 1));
const settings = Object.fromEntries(of('ENV').map((line) => line.split('='))) as Record<string, string>;

it('copies and runs only what is there', () => {
  const sources = of('COPY')
    .filter((line) => !line.startsWith('--from'))
    .flatMap((line) => line.split(' ').slice(0, -1));
  expect(sources).toEqual(['package.json', 'package-lock.json', 'src', 'intents']);
  const started = of('CMD').flatMap((line) => JSON.parse(line) as string[]);
  expect(started).toEqual(['node', 'src/launch.js']);
  expect([...sources, 'src/launch.js'].filter((path) => !existsSync(path))).toEqual([]);
  const ignored = readFileSync('.containerignore', 'utf8').trimEnd().split('\n');
  expect(ignored).toEqual(['*', ...sources.map((source) => `!${source}`)]);
});

it('runs as nobody of note, keeps its file outside, and ends by the signal that the bot knows', () => {
  expect([of('USER'), of('VOLUME'), of('STOPSIGNAL')]).toEqual([['node'], ['/data'], ['SIGTERM']]);
  expect(settings['DATABASE_URL']).toMatch(/^sqlite:\/data\//);
  expect(lines.findIndex((line) => line.startsWith('USER'))).toBeLessThan(lines.findIndex((line) => line.startsWith('CMD'))); // prettier-ignore
  expect(of('HEALTHCHECK')[0]).toContain('/livez');
});

it('has no secret in a layer, and settings that the program takes', () => {
  expect(lines.join('\n')).not.toMatch(/\d{5,}:[\w-]{20,}|_(?:TOKEN|SECRET)=|^ARG /m);
  const { TELEGRAM_BOT_TOKEN_FILE: token, ...rest } = settings;
  expect(token).toBe('/run/secrets/token');
  expect(readConfig(rest)).toMatchObject({
    server: { port: 8080, host: '0.0.0.0' },
    databasePath: '/data/kitchen.db',
  });
});

it('names in the unit what is there', () => {
  const unit = readFileSync('docs/deploying/blockhand.service', 'utf8');
  const program = /^ExecStart=\/usr\/bin\/node (\S+)$/m.exec(unit)?.[1];
  expect(existsSync(program ?? '')).toBe(true);
});

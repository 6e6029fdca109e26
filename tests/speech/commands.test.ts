// `hear` and `speak` as a person starts them: what one says, the other hears.
import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { scratchFolder } from '../storage/scratch.ts';
import { root } from './given.ts';

interface Ended {
  readonly status: number | null;
  readonly lines: readonly unknown[];
  readonly err: string;
}

function run(args: readonly string[], environment: Readonly<Record<string, string>> = {}): Ended {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['src/launch.js', ...args], {
    cwd: root,
    encoding: 'utf8',
    env: { ...process.env, KITCHEN_TIMEZONE: 'UTC', ...environment },
  });
  const lines = stdout.split('\n').filter((line) => line !== '');
  return { status, lines: lines.map((line) => JSON.parse(line) as unknown), err: stderr };
}

const SHIFT = `
turns:
  - {at: "2026-03-06T09:00", typed: ribeye 14.2 lb at 7.40}
  - {typed: fat 3.5}
`;

it('hears what it speaks, in the state of a shift and by itself', { timeout: 180_000 }, () => {
  const folder = scratchFolder();
  const note = join(folder, 'note.ogg');
  expect(run(['speak', 'bone 2.9', note])).toEqual({ status: 0, lines: [], err: '' });

  const entry = { kind: 'weigh', mode: 'set', part: 'bone', weightLb: '2.9' };
  const alone = run(['hear', note, '--json']);
  expect(alone).toMatchObject({ status: 0, err: '' });
  expect(alone.lines).toMatchObject([
    { file: note, heard: 'bone two point nine', entries: [entry], ask: null, rejected: false },
  ]);

  const shift = join(folder, 'shift.yaml');
  writeFileSync(shift, SHIFT);
  const inShift = run(['hear', note, note, '--json', '--context', shift]);
  expect(inShift.lines).toMatchObject([{ entries: [entry] }, { entries: [entry] }]);
});

it('rejects what is no note, says why, and goes on', () => {
  const folder = scratchFolder();
  const file = join(folder, 'note.ogg');
  writeFileSync(file, 'trim 1.1');
  const missing = join(folder, 'missing.ogg');
  const { status, lines, err } = run(['hear', missing, file, '--json']);
  expect(lines).toEqual([{ file, heard: '', confidence: 0, entries: [], ask: null, rejected: true }]);
  expect(err.trim().split('\n')).toHaveLength(2);
  expect(err).toContain(missing);
  expect(err).toContain('OGG/Opus or WAV');
  expect(status).toBe(2);
});

it.each([
  ['no file', ['hear']],
  ['an option that nobody knows', ['hear', 'a.ogg', '--loud']],
  ['no place for the note', ['speak', 'trim 1.1']],
])('%s is answered with the usage, and 2', (_, args) => {
  const { status, err } = run(args);
  expect(status).toBe(2);
  expect(err.trim().split('\n')).toHaveLength(1);
  expect(err).toContain(args[0]);
});

it.each([
  ['nothing to say', 'speak', ['  '], 1],
  ['more than can be read out', 'speak', ['trim '.repeat(300)], 1],
])('%s is one sentence', (_, command, args, wanted) => {
  const { status, err } = run([command, ...args, join(scratchFolder(), 'note.ogg')]);
  expect([status, err.trim().split('\n').length]).toEqual([wanted, 1]);
});

it('says that hearing is off where it is', () => {
  const file = join(scratchFolder(), 'note.wav');
  writeFileSync(file, wavOfSilence());
  const { lines, err } = run(['hear', file, '--json'], { SPEECH_ENGINE: 'none' });
  expect(lines).toMatchObject([{ rejected: true, entries: [] }]);
  expect(err).toContain('off');
});

it('says that a model is missing where it is', () => {
  const folder = join(scratchFolder(), 'model');
  mkdirSync(folder);
  const file = join(folder, 'note.wav');
  writeFileSync(file, wavOfSilence());
  const { lines, err } = run(['hear', file, '--json'], { SPEECH_ENGINE: `local:${folder}` });
  expect(lines).toMatchObject([{ rejected: true, entries: [] }]);
  expect(err).toContain('not installed');
});

it.each(['loud', 'local:', 'http:', 'http:nowhere at all', 'https'])(
  'the setting SPEECH_ENGINE=%s is named, and ends the program with 2',
  (value) => {
    const { status, err } = run(['hear', 'a.ogg'], { SPEECH_ENGINE: value });
    expect(status).toBe(2);
    expect(err).toMatch(/^[^\n]*SPEECH_ENGINE[^\n]*\n$/);
  },
);

/** A second of nothing: 16 bits, 8,000 a second. */
function wavOfSilence(): Uint8Array {
  const bytes = Buffer.alloc(44 + 16_000);
  bytes.write('RIFF', 0);
  bytes.writeUInt32LE(bytes.length - 8, 4);
  bytes.write('WAVEfmt ', 8);
  bytes.writeUInt32LE(16, 16);
  bytes.writeUInt16LE(1, 20);
  bytes.writeUInt16LE(1, 22);
  bytes.writeUInt32LE(8000, 24);
  bytes.writeUInt32LE(16_000, 28);
  bytes.writeUInt16LE(2, 32);
  bytes.writeUInt16LE(16, 34);
  bytes.write('data', 36);
  bytes.writeUInt32LE(16_000, 40);
  return bytes;
}

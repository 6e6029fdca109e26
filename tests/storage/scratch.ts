// Folders for tests, and processes of their own that write in them.
import { type ChildProcess, spawn, type SpawnOptions } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';

export const newFolder = (): string => mkdtempSync(join(tmpdir(), 'kitchen-'));

export const removeFolder = (folder: string): void => {
  rmSync(folder, { recursive: true, force: true });
};

/** A folder that is gone after the test. */
export function scratchFolder(): string {
  const folder = newFolder();
  onTestFinished(() => {
    removeFolder(folder);
  });
  return folder;
}

/** The content of each file of a folder, but for the lock and the shared memory, which say nothing. */
export function contentOf(folder: string): ReadonlyMap<string, string> {
  const names = readdirSync(folder).filter((name) => !name.endsWith('.lock') && !name.endsWith('-shm'));
  return new Map(names.map((name) => [name, readFileSync(join(folder, name), 'base64')]));
}

export interface Script {
  readonly process: ChildProcess;
  /** Lines that it wrote so far. */
  readonly lines: readonly string[];
  /** The first line, or undefined where it ended without one. */
  readonly begun: Promise<string | undefined>;
  /** It is gone and all that it wrote was read. */
  readonly ended: Promise<unknown>;
}

const REPOSITORY = fileURLToPath(new URL('../..', import.meta.url));

/** A script of this folder, run by itself. */
export function startScript(script: string, args: readonly string[], options: SpawnOptions = {}): Script {
  const path = fileURLToPath(new URL(script, import.meta.url));
  return started(process.execPath, ['--import', 'tsx', path, ...args], options);
}

export function started(command: string, args: readonly string[], options: SpawnOptions = {}): Script {
  const child = spawn(command, args, { cwd: REPOSITORY, stdio: ['ignore', 'pipe', 'ignore'], ...options });
  const lines: string[] = [];
  const { stdout } = child;
  if (stdout === null) throw new Error('a script needs its output read');
  const reader = createInterface({ input: stdout }).on('line', (line) => lines.push(line));
  const begun = Promise.race([once(reader, 'line'), once(reader, 'close')]).then(() => lines[0]);
  return { process: child, lines, begun, ended: Promise.all([once(child, 'close'), once(reader, 'close')]) };
}

/** Ended by the system, with no time to say goodbye. */
export async function kill(script: Script): Promise<void> {
  script.process.kill('SIGKILL');
  await script.ended;
}
